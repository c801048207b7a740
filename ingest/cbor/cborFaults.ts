import { type FieldFault, pointerPart } from '../decodeError.ts';

/** Faults that are told of one field of a stroke, and of a whole body that is still read on. */
const MOST_FAULTS = { ofField: 4, inAll: 20_000 } as const;

/** Where the reader of a body is, and what it met there that has no meaning here. */
export class CborFaults {
  /** Keys and places from the whole to the item that is being read; the reader keeps it. */
  readonly path: (string | number)[] = [];
  readonly told: FieldFault[] = [];
  /** The field of a stroke in which the last fault was found, and how many there. */
  #field = '';
  #there = 0;

  /** To the item that is being read: a JSON pointer (RFC 6901). */
  pointer(): string {
    return this.path.map((part) => `/${pointerPart(String(part))}`).join('');
  }

  /**
   * Notes what is wrong with the item, without the byte: the same fault of a stroke is the same wherever the stroke
   * stands in the body. Further ones of the same field are left out. Answers false where there are too many in all.
   */
  note(detail: string): boolean {
    const field = `${this.path[0]}/${this.path[1]}`;
    this.#there = field === this.#field ? this.#there + 1 : 1;
    this.#field = field;
    if (this.#there > MOST_FAULTS.ofField) return true;
    if (this.told.length >= MOST_FAULTS.inAll) return false;
    this.told.push({ pointer: this.pointer(), detail: `${detail}.` });
    return true;
  }
}
