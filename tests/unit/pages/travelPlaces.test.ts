import { describe, expect, test } from 'vitest';
import type { NormalSide, Room } from '../../../dashboards/src/api/types.ts';
import { gearTurns, metresPerTurn } from '../../../dashboards/src/stroke/gearTurns.ts';
import { outsideRanges } from '../../../dashboards/src/stroke/normalRanges.ts';

test('a profile is outside its normal stretch by stretch, and nowhere that one of them is unknown', () => {
  const normal = { lower: [4, 4, 4, 4, null, 4, 4, 4], upper: [6, 6, 6, 6, 6, 6, 6, 6] } as NormalSide;
  expect(outsideRanges([5, 7, 8, 3, 9, null, 6, 4], normal)).toEqual([
    { from: 1 / 8, to: 3 / 8, way: 'above' },
    { from: 3 / 8, to: 4 / 8, way: 'below' },
  ]);
  expect(outsideRanges([7, 5, 7, 5, 5, 5, 5, 7], normal)).toHaveLength(3);
});

describe('turns of the gear', () => {
  const room = { gearTeeth: 20, rackPitchMm: 5, travelMetres: 0.3 } as Room;

  test('are teeth times pitch apart, from fully in, the last at fully out', () => {
    expect(metresPerTurn(room)).toBeCloseTo(0.1, 12);
    const turns = gearTurns(room);
    expect(turns).toHaveLength(3);
    [1 / 3, 2 / 3, 1].forEach((place, i) => void expect(turns[i]).toBeCloseTo(place, 12));
  });

  test.each(['gearTeeth', 'rackPitchMm', 'travelMetres'])('are not told without %s', (name) => {
    expect(gearTurns({ ...room, [name]: null })).toEqual([]);
  });

  test('of a gear as fine as none are not drawn without end', () => {
    expect(gearTurns({ ...room, rackPitchMm: 0.001 })).toHaveLength(200);
  });
});
