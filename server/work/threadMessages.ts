/** What the thread is started with. */
export interface ThreadStart {
  readonly databaseUrl: string;
}

/** Leave what is under way and end. */
export type ToThread = 'stop';

/** What went wrong, to be written where the service writes. */
export interface FromThread {
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
}
