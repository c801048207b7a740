import type { ComparedGroup } from '../api/types.ts';

/** Whether there were strokes enough of this side and direction for an answer. */
export const isCompared = ({ shifts }: ComparedGroup): boolean => shifts.some(({ shift }) => shift !== null);
