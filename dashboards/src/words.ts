import { chartWords } from './words/charts.ts';
import { coachesWords } from './words/coaches.ts';
import { liveWords } from './words/live.ts';
import { roomWords } from './words/room.ts';
import { shellWords } from './words/shell.ts';
import { thingsWords } from './words/things.ts';
import { warningsWords } from './words/warnings.ts';

/**
 * Every word that the first pages say, ready to be translated: a file a page in `words/`. What only pages in chunks of
 * their own say stands there beside these, and they import it themselves: it would come with each first visit. The pages
 * report what was measured; no sentence there may promise that a room is in order.
 */
export const words = {
  ...shellWords,
  ...chartWords,
  ...coachesWords,
  ...roomWords,
  ...warningsWords,
  ...thingsWords,
  ...liveWords,
} as const;
