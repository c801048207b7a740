import { describe, expect, test } from 'vitest';
import type { NormalSide, Room, SideTravel } from '../../../dashboards/src/api/types.ts';
import { highest } from '../../../dashboards/src/charts/travel/travelHeight.ts';
import type { TravelPicture } from '../../../dashboards/src/charts/travel/travelSpec.ts';
import { BESIDE, stretches } from '../../../dashboards/src/charts/travel/travelStretches.ts';
import { gearTurns, metresPerTurn } from '../../../dashboards/src/stroke/gearTurns.ts';
import { outsideRanges } from '../../../dashboards/src/stroke/normalRanges.ts';
import { MOST_OVERLAYS, overlaysOf } from '../../../dashboards/src/stroke/overlayChoice.ts';

type Side = Pick<SideTravel, 'inrushEnd' | 'endStop' | 'pauses' | 'positions' | 'amps'>;

const OUT: Side = { inrushEnd: 0.03, endStop: 0.97, pauses: [0.4], positions: [], amps: [] };
const IN: Side = { inrushEnd: 0.97, endStop: 0.02, pauses: [], positions: [], amps: [] };

describe('the phases along the travel', () => {
  test('run from fully in on the way out', () => {
    expect(stretches(OUT as SideTravel)).toEqual([
      { from: 0, to: 0.03, phase: 'inrush' },
      { from: 0.03, to: 1, phase: 'running' },
      { from: 1, to: 1 + BESIDE, phase: 'endStop' },
      { from: 0.396, to: 0.404, phase: 'pause' },
    ]);
  });

  test('run from fully out on the way in, from left to right all the same', () => {
    expect(stretches(IN as SideTravel)).toEqual([
      { from: 0.97, to: 1, phase: 'inrush' },
      { from: 0, to: 0.97, phase: 'running' },
      { from: -BESIDE, to: 0, phase: 'endStop' },
    ]);
  });
});

describe('the height of the picture', () => {
  const picture = (side: Side): TravelPicture =>
    ({
      lines: [{ side: 'front', profile: [5, null, 6] }],
      travel: { sides: [side] },
      normal: new Map(),
      overlays: [],
      marks: [],
    }) as unknown as TravelPicture;

  test.each([
    ['out', OUT, [0.01, 0.03, 0.5, 0.96, 0.99]],
    ['in', IN, [0.99, 0.97, 0.5, 0.04, 0.01]],
  ])('is neither that of the inrush nor of the end stop: %s', (_, side, positions) => {
    expect(highest(picture({ ...side, positions, amps: [30, 29, 9, 8, 40] }))).toBe(9);
    expect(highest(picture({ ...side, positions, amps: [30, 29, 4, 11, 40] }))).toBe(11);
  });

  test('has room for the normal, for what is laid over and for each mark', () => {
    const plain = picture({ ...OUT });
    expect(highest(plain)).toBe(6);
    const normal = new Map([['front', { upper: [7, null] }]]) as TravelPicture['normal'];
    expect(highest({ ...plain, normal })).toBe(7);
    const lines = [{ side: 'rear', profile: [8] }];
    expect(highest({ ...plain, overlays: [{ letter: 'B', lines }] })).toBe(8);
    expect(highest({ ...plain, marks: [{ amps: 13 }] as unknown as TravelPicture['marks'] })).toBe(13);
  });
});

test('a profile is outside its normal stretch by stretch, and nowhere that one of them is unknown', () => {
  const normal = { lower: [4, 4, 4, 4, null, 4, 4, 4], upper: [6, 6, 6, 6, 6, 6, 6, 6] } as NormalSide;
  expect(outsideRanges([5, 7, 8, 3, 9, null, 6, 4], normal)).toEqual([
    { from: 1 / 8, to: 3 / 8, way: 'above' },
    { from: 3 / 8, to: 4 / 8, way: 'below' },
  ]);
  expect(outsideRanges([7, 5, 7, 5, 5, 5, 5, 7], normal)).toHaveLength(3);
});

describe('turns of the gear', () => {
  const room = { gearTeeth: 16, rackPitchMm: 5, travelMetres: 0.24 } as Room;

  test('are teeth times pitch apart, from fully in, the last at fully out', () => {
    expect(metresPerTurn(room)).toBeCloseTo(0.08, 12);
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

test('the strokes that an address lays over are each named once, and no more than have a colour', () => {
  expect(overlaysOf('?with=a,b,,a')).toEqual(['a', 'b']);
  expect(overlaysOf('?without=a')).toEqual([]);
  const many = Array.from({ length: MOST_OVERLAYS + 2 }, (_, i) => `s${i}`);
  expect(overlaysOf(`?with=${many.join()}`)).toEqual(many.slice(0, MOST_OVERLAYS));
});
