/**
 * The points of a trend as the database hands them over to be chosen from: one string of bytes, so many for each point.
 * A row, an object and a date for each would take most of the time of an answer, and so would the text of each.
 *
 *     16 bytes  id of the stroke            float64  expected, NaN for null
 *     int64     microseconds since 2000     float64  adjusted, NaN for null
 *     float64   value                       int16    beyond: 0 or 1; what was not judged is not beyond
 */
const BYTES = 50;
const AT = 16;
const VALUE = 24;
const EXPECTED = 32;
const ADJUSTED = 40;
const BEYOND = 48;
const DAY_MS = 86_400_000;
/** Where Postgres counts its times from. */
const POSTGRES_EPOCH_MS = Date.UTC(2000, 0, 1);

/**
 * SQL that packs rows with `stroke_id`, `placed_at`, `value`, `expected`, `adjusted` and `beyond`, in their order. In
 * base64: the driver takes text, and reading bytes from hexadecimal digits takes seven times as long.
 */
export const PACKED = `encode(string_agg(
  uuid_send(stroke_id) || timestamptz_send(placed_at) || float8send(value) || float8send(coalesce(expected, 'NaN'))
    || float8send(coalesce(adjusted, 'NaN')) || int2send(coalesce(beyond, false)::integer::smallint), ''
), 'base64')`;

/** What `PACKED` answered; null where there was no row. Points are told by their place, from 0. */
export class PackedPoints {
  readonly count: number;
  readonly #bytes: Buffer;
  /** The same, of which numbers are read in a third of the time. */
  readonly #view: DataView;
  readonly #days = new Map<number, string>();

  constructor(packed: string | null) {
    this.#bytes = Buffer.from(packed ?? '', 'base64');
    this.#view = new DataView(this.#bytes.buffer, this.#bytes.byteOffset, this.#bytes.length);
    this.count = this.#bytes.length / BYTES;
  }

  /** The value as it is drawn: the adjusted one, or what was measured where that is not known. */
  shown(point: number): number {
    const adjusted = this.#number(point, ADJUSTED);
    return Number.isNaN(adjusted) ? this.#number(point, VALUE) : adjusted;
  }

  countBeyond(): number {
    let count = 0;
    for (let point = 0; point < this.count; point++) if (this.#beyond(point)) count++;
    return count;
  }

  texts(): string[] {
    return Array.from({ length: this.count }, (_, point) => this.text(point));
  }

  /** As JSON text of the schema's `TrendPoint`. */
  text(point: number): string {
    const value = textOf(this.#number(point, VALUE));
    const expected = textOf(this.#number(point, EXPECTED));
    const adjusted = textOf(this.#number(point, ADJUSTED));
    return `{"strokeId":"${this.#strokeId(point)}","at":"${this.#at(point)}","value":${value},"expected":${expected},"adjusted":${adjusted},"beyond":${this.#beyond(point)}}`;
  }

  #strokeId(point: number): string {
    const from = point * BYTES;
    const hex = this.#bytes.toString('hex', from, from + AT);
    return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
  }

  /** Only once for each day by the engine's own way to write a date, which takes seven times as long. */
  #at(point: number): string {
    const from = point * BYTES + AT;
    const microseconds = this.#view.getInt32(from) * 2 ** 32 + this.#view.getUint32(from + 4);
    const ms = POSTGRES_EPOCH_MS + Math.floor(microseconds / 1000);
    const day = Math.floor(ms / DAY_MS);
    let date = this.#days.get(day);
    if (date === undefined) {
      date = new Date(day * DAY_MS).toISOString().split('T')[0];
      this.#days.set(day, date);
    }
    return `${date}T${timeOfDay(ms - day * DAY_MS)}Z`;
  }

  #beyond(point: number): boolean {
    return this.#view.getInt16(point * BYTES + BEYOND) === 1;
  }

  #number(point: number, place: number): number {
    return this.#view.getFloat64(point * BYTES + place);
  }
}

function timeOfDay(ms: number): string {
  const [hour, minute] = [Math.floor(ms / 3_600_000), Math.floor(ms / 60_000) % 60];
  const [second, millisecond] = [Math.floor(ms / 1000) % 60, ms % 1000];
  return `${digits(hour, 2)}:${digits(minute, 2)}:${digits(second, 2)}.${digits(millisecond, 3)}`;
}

function digits(number: number, count: number): string {
  return String(number).padStart(count, '0');
}

function textOf(number: number): string {
  return Number.isNaN(number) ? 'null' : String(number);
}
