/** One field at fault: a JSON pointer (RFC 6901) to it and what is wrong with it. */
export interface FieldFault {
  readonly pointer: string;
  readonly detail: string;
}

/** What a sender wrote cannot be read as a stroke. `faults` name the fields, the first few of them. */
export class DecodeError extends Error {
  readonly faults: readonly FieldFault[];

  constructor(faults: readonly FieldFault[], options?: ErrorOptions) {
    super(faults[0]?.detail ?? 'The stroke cannot be read.', options);
    this.name = 'DecodeError';
    this.faults = faults;
  }

  static at(pointer: string, detail: string): DecodeError {
    return new DecodeError([{ pointer, detail }]);
  }
}

/** Escapes a name for use in a JSON pointer (RFC 6901, section 3). */
export function pointerPart(name: string): string {
  return name.replaceAll('~', '~0').replaceAll('/', '~1');
}
