/** What may be said of a stroke in the query, where the body's form has no place for it. */
export interface SentQuery {
  readonly roomId?: string;
  readonly key?: string;
  readonly startedAt?: string;
  /** Of several strokes in one recording: one for all, or one for each, with commas between. */
  readonly direction?: string;
  readonly rateHz?: string;
  /** The side that a column `amps` means. */
  readonly side?: string;
  /** CSV: those of the room, as far as it is known; nobody says them. */
  readonly roomSides?: readonly string[];
  /** CSV: what each column is, whatever its title says (`ingest/csv/roles.ts`). */
  readonly columns?: string;
}

/** Where a fault lies in the body that was sent, and what to say of it. */
export interface Place {
  readonly pointer: string;
  readonly said?: string;
}

/** Leads from a pointer of `decodeStrokes` back to the body. */
export type PlaceOf = (pointer: string) => Place;

/**
 * A body of another form put into the form of JSON, for the one validation that there is: `strokes` is what
 * `decodeStrokes` takes. `placeOf` is null where its pointers lead to the body as they are.
 */
export interface SentForm {
  readonly strokes: unknown;
  readonly placeOf: PlaceOf | null;
}

/** One whose pointers have to be led back. */
export interface TranslatedForm extends SentForm {
  readonly placeOf: PlaceOf;
}
