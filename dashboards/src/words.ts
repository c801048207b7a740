import { chartWords } from './words/charts.ts';
import { coachesWords } from './words/coaches.ts';
import { compareWords } from './words/compare.ts';
import { liveWords } from './words/live.ts';
import { noticesWords } from './words/notices.ts';
import { peopleWords } from './words/people.ts';
import { recordWords } from './words/record.ts';
import { roomWords } from './words/room.ts';
import { shellWords } from './words/shell.ts';
import { strokeWords } from './words/stroke.ts';
import { thingsWords } from './words/things.ts';
import { uploadWords } from './words/upload.ts';
import { warningsWords } from './words/warnings.ts';

/**
 * Every word that the pages say, in one place, ready to be translated: a file a page in `words/`. The pages report
 * what was measured; no sentence there may promise that a room is in order.
 */
export const words = {
  ...shellWords,
  ...chartWords,
  ...coachesWords,
  ...roomWords,
  ...warningsWords,
  ...compareWords,
  ...strokeWords,
  ...thingsWords,
  ...uploadWords,
  ...liveWords,
  ...peopleWords,
  ...recordWords,
  ...noticesWords,
} as const;
