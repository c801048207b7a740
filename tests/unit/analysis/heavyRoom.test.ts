import { expect, test } from 'vitest';
import type { Drive } from '../../../analysis/trace.ts';
import { changed } from './support/contexts.ts';
import { foldAll } from './support/folded.ts';
import { ROOM } from './support/handMade.ts';
import { strokeEvents } from './support/strokeEvents.ts';

/** What the first strokes of a room without a rating say, if it runs at a part of what its motors draw stalled. */
function saidOf(drive: Drive, runningAmps: number, partOfStall: number) {
  const stallAmps = runningAmps / partOfStall;
  const factors = [runningAmps / 8, runningAmps / 7.5];
  const events = strokeEvents(8, ROOM, 5, () => ({ factors })).map((event) =>
    // A retract takes a tenth more than an extend: the part is the mean of both.
    changed(event, {
      all: () => ({ inrushAmps: 1.05 * stallAmps, endStopAmps: 1.05 * stallAmps }),
    }),
  );
  return foldAll({ ...ROOM, drive }, events).warnings.map(({ kind, side }) => [kind, side]);
}

const HEAVY = [['heavy-room', null]];

test.each([
  {
    name: 'over half of its stall, however little that is',
    drive: 'in-wall',
    amps: 6,
    part: 0.56,
    said: HEAVY,
  },
  { name: 'over half of its stall by a single current', drive: 'cable', amps: 6, part: 0.56, said: HEAVY },
  { name: 'near what no drive should need, at 45 %', drive: 'in-wall', amps: 13, part: 0.45, said: HEAVY },
  { name: 'no more than drives in health draw, at 45 %', drive: 'in-wall', amps: 9, part: 0.45, said: [] },
  {
    name: 'much for racks that guide, but little for a cable',
    drive: 'cable',
    amps: 13,
    part: 0.45,
    said: [],
  },
  { name: 'near what no drive should need, at 36 %', drive: 'in-wall', amps: 13, part: 0.36, said: [] },
] as const)('a room without a rating that draws $name', ({ drive, amps, part, said }) => {
  expect(saidOf(drive, amps, part)).toEqual(said);
});
