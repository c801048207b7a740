import type { ServiceKind } from '../../../analysis/trace.ts';

/** Work on the room, done before the stroke of this index. */
export interface PlannedService {
  readonly beforeStroke: number;
  readonly kind: ServiceKind;
  readonly side: string | null;
  readonly notes: string | null;
}
