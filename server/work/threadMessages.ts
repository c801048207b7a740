import type { AnalyseRoomPayload } from '../../ingest/analyseRoomJob.ts';
import type { AnalysisOutcome } from './analyseRoom.ts';

/** What the thread is started with. */
export interface ThreadStart {
  readonly databaseUrl: string;
  readonly connections: number;
}

/** `stop` lets the rooms under way be left, `end` closes the thread. */
export type ToThread =
  | { readonly type: 'analyse'; readonly number: number; readonly room: AnalyseRoomPayload }
  | { readonly type: 'stop' }
  | { readonly type: 'end' };

/** Every `analyse` is answered once, under its number. */
export type FromThread =
  | { readonly type: 'done'; readonly number: number; readonly outcome: AnalysisOutcome }
  | { readonly type: 'failed'; readonly number: number; readonly error: unknown }
  | { readonly type: 'log'; readonly err: unknown; readonly strokeId: string; readonly message: string };

/** What the analysis tells of strokes that it had to set aside. */
export interface AnalysisLog {
  error(details: { readonly err: unknown; readonly strokeId: string }, message: string): void;
}
