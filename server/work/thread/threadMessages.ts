import type { LogDetails, RoundDone } from '../inHand/analysisLog.ts';

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

interface Trouble {
  readonly details: LogDetails;
  readonly message: string;
}
