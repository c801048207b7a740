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
  /** CSV: what each column is, whatever its title says (`ingest/csv/roles.ts`). */
  readonly columns?: string;
}

/** Where a fault lies in the body that was sent, and what to say of it. */
export interface Place {
  readonly pointer: string;
  readonly said?: string;
}

/**
 * A body of another form put into the form of JSON, for the one validation that there is: `strokes` is what
 * `decodeStrokes` takes, `placeOf` leads from its pointers back to the body.
 */
export interface SentForm {
  readonly strokes: unknown;
  readonly placeOf: (pointer: string) => Place;
}
