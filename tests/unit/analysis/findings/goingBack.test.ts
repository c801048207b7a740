import { expect, test } from 'vitest';
import { advanceRoom, beginRoom } from '../../../../analysis/room/fold.ts';
import { changed } from '../support/contexts.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents, type Told } from '../support/strokeEvents.ts';

const FROM = 40;
const BACK = 60;
const STROKES = 75;

/** What is said of one kind, stroke by stroke, while a trouble lasts and after it is gone. */
function saidWhile(kind: string, trouble: Partial<Told>, after: Partial<Told>) {
  const state = beginRoom('room', ROOM, []);
  const events = strokeEvents(STROKES, ROOM, 11, (i) => (i < FROM ? {} : i < BACK ? trouble : after));
  return events.flatMap((event) => advanceRoom(state, event).warnings).filter((said) => said.kind === kind);
}

test('a late side that comes in time again is told as it was, until it is cleared', () => {
  const said = saidWhile('late-side', { lagS: 2 }, { lagS: -0.35 });
  expect(said.at(-1)?.clearedAtMs).not.toBeNull();
  expect(new Set(said.map(({ side }) => side))).toEqual(new Set(['rear']));
  for (const { headline } of said)
    expect(headline).toMatch(/^The rear side reaches its end [12](\.\d)? s later/);
});

test('a share that swings back is told as it was, until it is cleared', () => {
  const said = saidWhile('uneven-sides', { factors: [1.15, 0.85] }, { factors: [0.97, 1.03] });
  expect(said.at(-1)?.clearedAtMs).not.toBeNull();
  expect(new Set(said.map(({ side }) => side))).toEqual(new Set(['front']));
  for (const { headline } of said)
    expect(headline).toMatch(
      /^The front side now carries [3-9] % of the room's load that the rear side used to carry\.$/,
    );
});

test('a rise is not over because stalls that read higher for a while tell of a cold that nobody recorded', () => {
  const state = beginRoom('room', ROOM, []);
  const events = strokeEvents(STROKES, ROOM, 11, (i) => ({
    ambientC: null,
    factors: i < FROM ? [1, 1] : [1.16, 1.16],
  })).map((event, i) =>
    i < BACK
      ? event
      : changed(event, {
          all: ({ inrushAmps, endStopAmps }) => ({
            inrushAmps: 1.12 * inrushAmps,
            endStopAmps: endStopAmps === null ? null : 1.12 * endStopAmps,
          }),
        }),
  );
  const said = events.flatMap((event) => advanceRoom(state, event).warnings);
  expect(new Set(said.map(({ kind, id }) => `${kind} ${id}`)).size).toBe(1);
  expect(said.at(-1)).toMatchObject({ kind: 'rising-draw', clearedAtMs: null });
});
