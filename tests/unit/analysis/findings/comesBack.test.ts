import { expect, test } from 'vitest';
import { beginComings, isOverAfter, noteComing, saidAnew } from '../../../../analysis/findings/comesBack.ts';
import type { StrokeEvent } from '../../../../analysis/history.ts';
import { foldAll } from '../support/folded.ts';
import { ROOM } from '../support/handMade.ts';
import { strokeEvents } from '../support/strokeEvents.ts';

/** The same stroke, of whose front side measuring found that it was noisy. */
function noisy(event: StrokeEvent): StrokeEvent {
  const doubts = [{ side: 'front', doubt: 'noise' as const, detail: 'It is noisy.' }];
  return { ...event, analysis: { ...event.analysis, doubts } };
}

/** When what is said of the record was opened and cleared, as numbers of strokes. */
function saidBetween(count: number, isNoisy: (stroke: number) => boolean): (number | null)[][] {
  const events = strokeEvents(count, ROOM, 1).map((event, i) => (isNoisy(i) ? noisy(event) : event));
  const strokeAt = (atMs: number) => events.findIndex((event) => event.atMs === atMs);
  return foldAll(ROOM, events).warnings.map(({ openedAtMs, clearedAtMs }) => [
    strokeAt(openedAtMs),
    clearedAtMs === null ? null : strokeAt(clearedAtMs),
  ]);
}

test('a record that is noisy for a while is to be trusted after four good strokes', () => {
  expect(saidBetween(60, (i) => i >= 30 && i < 34)).toEqual([[31, 37]]);
});

test('one that is noisy again and again is not said to be good after each few good strokes', () => {
  // Two of eight strokes: each time the warning would be over before the next two.
  const said = saidBetween(120, (i) => i >= 30 && i % 8 < 2);
  expect(said).toEqual([
    [33, 39],
    [41, null],
  ]);
});

test('what came back soon is over after twice as many good strokes', () => {
  const said = saidBetween(90, (i) => (i >= 30 && i < 32) || (i >= 40 && i < 42));
  expect(said).toEqual([
    [31, 37],
    [41, 49],
  ]);
});

test('what comes back after a long time is as new', () => {
  const said = saidBetween(120, (i) => (i >= 30 && i < 32) || (i >= 90 && i < 92));
  expect(said).toEqual([
    [31, 37],
    [91, 97],
  ]);
});

test('a record that is noisy on every other stroke or so is doubted once, however long a run of good strokes hides it', () => {
  // Five good strokes in a row among strokes of which half are noisy.
  const noisyOf = [0, 2, 3, 5, 6, 8, 10, 11, 13, 14];
  const said = saidBetween(90, (i) => i >= 30 && noisyOf.includes((i - 30) % 20));
  expect(said).toEqual([[32, null]]);
});

test('a rise that shows on every other stroke or so is said once', () => {
  const upOf = [0, 1, 3, 5, 6, 8, 10, 11];
  const events = strokeEvents(100, ROOM, 1, (i) =>
    i >= 30 && upOf.includes((i - 30) % 17) ? { factors: [1.35, 1] } : {},
  );
  const { warnings } = foldAll(ROOM, events);
  expect(warnings.map(({ kind, side }) => [kind, side])).toEqual([['rising-draw', 'front']]);
  expect(warnings[0].clearedAtMs).toBeNull();
});

test('one stroke that speaks for it after work that may have ended it tells nothing of how often it shows', () => {
  const quietAfter = (isWorkedOn: boolean) => {
    let comings = beginComings();
    saidAnew(comings, [true, false, true]);
    if (isWorkedOn) comings = beginComings();
    noteComing(comings, true);
    let quiet = 0;
    while (!isOverAfter(comings, 4)) {
      noteComing(comings, false);
      quiet++;
    }
    return quiet;
  };
  expect(quietAfter(true)).toBe(4);
  expect(quietAfter(false)).toBeGreaterThan(4);
});

test('a rise that comes and goes is one that goes on, once it came back soon', () => {
  const isUp = (i: number) => i >= 30 && i % 12 < 5;
  const events = strokeEvents(130, ROOM, 1, (i) => (isUp(i) ? { factors: [1.35, 1] } : {}));
  const { warnings } = foldAll(ROOM, events);
  expect(new Set(warnings.map(({ kind, side }) => `${kind} ${side}`))).toEqual(
    new Set(['rising-draw front']),
  );
  expect(warnings.length).toBeLessThanOrEqual(2);
  expect(warnings.at(-1)?.clearedAtMs).toBeNull();
});

test('one calm stroke lowers no severity, several do', () => {
  const events = strokeEvents(80, ROOM, 1, (i) => {
    if (i < 30) return {};
    return i < 50 && i !== 40 ? { factors: [1.4, 1.4] } : { factors: [1.12, 1.12] };
  });
  const { judgements } = foldAll(ROOM, events);
  const severities = judgements.map(
    ({ warnings }) => warnings.find(({ kind }) => kind === 'rising-draw')?.severity,
  );
  expect(severities.slice(36, 50).every((severity) => severity === 'service')).toBe(true);
  expect(severities.slice(60).filter((severity) => severity !== undefined)).toContain('watch');
});
