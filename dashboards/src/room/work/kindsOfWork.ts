import { entriesOf } from '../../entriesOf.ts';
import { words } from '../../words.ts';

/** Every kind of work with its name. The keys of the words are the kinds: the compiler holds them equal wherever one is shown. */
export const KINDS_OF_WORK = entriesOf(words.services.kinds);
