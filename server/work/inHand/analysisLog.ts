/** Rooms that were brought up to date together. */
export interface RoundDone {
  readonly rooms: number;
  readonly seconds: number;
}

/** Whom or what it concerns, where that is one stroke or one room. */
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
