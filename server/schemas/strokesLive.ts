import type { ProblemMessage } from './problemMessage.ts';

/** What the service says to a logger on `/api/v1/strokes/live`, as JSON or CBOR. */
export type LinkAnswer =
  /** The piece of this number, and all before it, would survive the service's own death. */
  | { readonly type: 'ack'; readonly key: string; readonly seq: number }
  /** The stroke is stored as a whole: the logger may forget it. */
  | { readonly type: 'stored'; readonly key: string; readonly strokeId: string }
  /** The stroke was begun before: go on with the piece of this number. */
  | { readonly type: 'resume'; readonly key: string; readonly nextSeq: number }
  | ProblemMessage;
