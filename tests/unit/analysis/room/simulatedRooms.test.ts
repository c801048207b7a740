import { expect, test } from 'vitest';
import type { Drive } from '../../../../analysis/trace.ts';
import { drawRoom } from '../../../../server/demo/simulator/drawRoom.ts';
import { proudFastener } from '../../../../server/demo/simulator/faults/bumps.ts';
import type { PlannedFault } from '../../../../server/demo/simulator/faults/fault.ts';
import { frictionRise } from '../../../../server/demo/simulator/faults/friction.ts';
import type { SimulatedRoom } from '../../../../server/demo/simulator/room.ts';
import { fromMotorFleet } from '../../../detection/fleets.ts';
import { playHistory } from '../../../detection/playFleet.ts';

const ONSET = 34;
const STROKES = 46;

/** A room that records quickly and plainly enough for many strokes in a short test; the rest is drawn by the seed. */
function roomOf(seed: number, drive: Drive): SimulatedRoom {
  return drawRoom(seed, { drive, strokeS: 9, rateHz: 25, noiseAmps: 0.1, supplyRateHz: 10 });
}

function played(seed: number, drive: Drive, fault: (room: SimulatedRoom) => PlannedFault | null) {
  const room = roomOf(seed, drive);
  const planned = fault(room);
  const plan = {
    startsAtMs: Date.UTC(2025, 3, 1),
    endsAtMs: null,
    strokes: STROKES,
    climate: { meanC: 16, seasonC: 4, weatherC: 3 },
    faults: planned === null ? [] : [planned],
    variants: [],
    services: [],
  };
  const told = fromMotorFleet({ seed, room, plan, fault: planned, variants: [] });
  const history = playHistory(told.room, told.events());
  return { room, label: planned?.label, ...history };
}

test.each([
  { seed: 3, drive: 'in-wall' as const, step: 0.15, sideIndex: null },
  { seed: 4, drive: 'in-wall' as const, step: 0.3, sideIndex: 1 },
  { seed: 5, drive: 'through-frame' as const, step: 0.2, sideIndex: null },
])(
  'a $drive room whose friction steps up by $step is called within six strokes',
  ({ seed, drive, step, sideIndex }) => {
    const { warnings, label } = played(seed, drive, (room) =>
      frictionRise(room, { onsetStroke: ONSET, sideIndex, step, perStroke: 0 }),
    );
    expect(warnings.map(({ warning }) => warning.kind)).toEqual(['rising-draw']);
    expect(warnings[0].warning.side).toBe(label?.side);
    expect(warnings[0].openedAt).toBeGreaterThan(ONSET);
    expect(warnings[0].openedAt - ONSET + 1).toBeLessThanOrEqual(6);
  },
);

test('a proud fastener is called a stall spike at its place, and its pattern told', () => {
  const position = 0.37;
  const { warnings, label } = played(6, 'in-wall', (room) =>
    proudFastener(room, {
      onsetStroke: ONSET,
      sideIndex: 0,
      position,
      widthMetres: Math.max(0.01, 0.25 * room.load.speedMetresPerS),
      part: 1.2,
    }),
  );
  const [first] = warnings.map(({ warning }) => warning);
  expect(first).toMatchObject({ kind: 'stall-spike', side: label?.side, pattern: 'same-place' });
  expect(Math.abs((first.position ?? 9) - position)).toBeLessThan(0.02);
  expect(warnings).toHaveLength(1);
});

test.each([
  { seed: 11, drive: 'in-wall' as const },
  { seed: 12, drive: 'in-wall' as const },
  { seed: 13, drive: 'through-frame' as const },
  { seed: 14, drive: 'cable' as const },
])('a healthy $drive room calls nobody and ends clear: seed $seed', ({ seed, drive }) => {
  const { warnings, strokes, verdict } = played(seed, drive, () => null);
  expect(warnings).toEqual([]);
  expect(strokes.every(({ event }) => event.analysis.status === 'done')).toBe(true);
  expect(verdict).toBe('clear');
});
