/** What the thread is started with. */
export interface ThreadStart {
  readonly databaseUrl: string;
  /** Where it says which stroke it has in hand (`StrokeInHand`). */
  readonly hand: SharedArrayBuffer;
  /** Strokes over which a thread hung or died before. */
  readonly heldUp: readonly string[];
}

/** Leave what is under way and end. */
export type ToThread = 'stop';

/** What went wrong, to be written where the service writes; or what was done. */
export type FromThread = Trouble | RoundDone;

/** Rooms that were brought up to date together. */
export interface RoundDone {
  readonly rooms: number;
  readonly seconds: number;
}

interface Trouble {
  readonly details: LogDetails;
  readonly message: string;
}

export interface LogDetails {
  readonly err: unknown;
  readonly strokeId?: string;
  readonly roomId?: string;
}

/** What the analysis tells of strokes that it had to set aside, and of its own troubles. */
export interface AnalysisLog {
  error(details: LogDetails, message: string): void;
  /** Told after each round in which there was something to do. */
  done?(round: RoundDone): void;
}
