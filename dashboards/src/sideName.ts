import { words } from './words.ts';

/** Rooms with one motor call their only side so (the contract's word); people do not. */
const ONLY_SIDE = 'main';

/** How a side is called on the pages. */
export const sideName = (side: string): string => (side === ONLY_SIDE ? words.onlySide : side);

/** How a side begins a sentence or a heading. */
export const sideInSentence = (side: string): string =>
  side === ONLY_SIDE ? words.course.motor : words.course.side(side);

/** How a picture of one side is headed. */
export const sideTitle = (side: string): string =>
  side === ONLY_SIDE ? words.onlySide : words.trend.side(side);
