import type { Direction } from '../../../analysis/trace.ts';
import {
  type FaultLabel,
  type LabelledFault,
  type LabelParts,
  labelOf,
  namedSide,
} from '../../../server/demo/simulator/faults/fault.ts';
import { Random } from '../../../server/demo/simulator/random.ts';
import type { PlainCondition, PlainSensor } from './condition.ts';
import type { PlainRoom } from './room.ts';

/** A fault of a plain room: what a perfect judge says of it, and what it does to each stroke from its onset on. */
export interface PlainFault extends LabelledFault {
  /** The stroke before which the room is lubricated, as part of the fault's story. */
  readonly serviceStroke: number | null;
  readonly change: (condition: PlainCondition, stroke: number, random: Random) => PlainCondition;
}

export interface PlainFaultKind {
  readonly name: string;
  readonly leastSides: 1 | 2;
  readonly draw: (room: PlainRoom, random: Random, onset: number) => PlainFault;
}

function fault(
  name: string,
  onset: number,
  label: LabelParts,
  change: PlainFault['change'],
  serviceStroke: number | null = null,
): PlainFault {
  return { name, label: labelOf(onset, label), startsStroke: onset, serviceStroke, change };
}

/** A side that is recorded. */
function anySide(room: PlainRoom, random: Random): number {
  return random.pick(room.clamps);
}

/** With one clamp on a room of two sides a rise on both can only be told of the side that is seen. */
function seenSide(room: PlainRoom, side: number | null): string | null {
  return namedSide(room, side ?? (room.clamps.length === 1 ? room.clamps[0] : null));
}

function levelFault(
  name: string,
  room: PlainRoom,
  onset: number,
  told: Omit<LabelParts, 'side'>,
  side: number | null,
  factor: (stroke: number) => number,
  serviceStroke: number | null = null,
): PlainFault {
  const change: PlainFault['change'] = (condition, stroke) => ({
    ...condition,
    levels: condition.levels.map((level, i) =>
      side === null || side === i ? level * factor(stroke) : level,
    ),
  });
  return fault(name, onset, { ...told, side: seenSide(room, side) }, change, serviceStroke);
}

const rises: readonly PlainFaultKind[] = [false, true].flatMap((oneSide) => {
  const suffix = oneSide ? '-one-side' : '';
  const leastSides = oneSide ? 2 : 1;
  const alsoFits = oneSide ? (['uneven-sides'] as const) : [];
  return [
    {
      name: `step${suffix}`,
      leastSides,
      draw: (room, random, onset) => {
        const severity = random.uniform(0.15, 0.4);
        const side = oneSide ? anySide(room, random) : null;
        const told = { kind: 'rising-draw', severity, alsoFits } as const;
        return levelFault(`step${suffix}`, room, onset, told, side, () => 1 + severity);
      },
    },
    {
      name: `drift${suffix}`,
      leastSides,
      draw: (room, random, onset) => {
        const severity = random.uniform(0.002, 0.006);
        const side = oneSide ? anySide(room, random) : null;
        const told = { kind: 'rising-draw', severity, alsoFits } as const;
        return levelFault(`drift${suffix}`, room, onset, told, side, (stroke) =>
          Math.min(1.8, 1 + severity * (stroke - onset + 1)),
        );
      },
    },
  ] satisfies PlainFaultKind[];
});

const share: PlainFaultKind = {
  name: 'uneven',
  leastSides: 2,
  draw: (room, random, onset) => {
    const moved = random.uniform(0.06, 0.15);
    const side = anySide(room, random);
    const told = { kind: 'uneven-sides', severity: moved, side: namedSide(room, side) } as const;
    return fault('uneven', onset, { ...told, alsoFits: ['rising-draw'] }, (condition) => ({
      ...condition,
      levels: condition.levels.map((level, i) => level * (i === side ? 1 + 2 * moved : 1 - 2 * moved)),
    }));
  },
};

function spikeFault(
  name: string,
  room: PlainRoom,
  onset: number,
  random: Random,
  told: Partial<FaultLabel>,
  places: (stroke: Random) => readonly number[],
): PlainFault {
  const side = anySide(room, random);
  const times = random.uniform(1.5, 3);
  const widthS = random.uniform(0.1, 0.5);
  const label = { kind: 'stall-spike', side: namedSide(room, side), severity: times - 1, ...told } as const;
  return fault(name, onset, label, (condition, _stroke, strokeRandom) => {
    const at = places(strokeRandom);
    const half = widthS / 2 / room.travelS[condition.direction];
    const shape = (i: number, position: number) =>
      i === side && at.some((place) => Math.abs(position - place) < half) ? times : 1;
    return { ...condition, shapes: [...condition.shapes, shape] };
  });
}

const spikes: readonly PlainFaultKind[] = [
  {
    name: 'spike-same-place',
    leastSides: 1,
    draw: (room, random, onset) => {
      const position = random.uniform(0.12, 0.88);
      const told = { position, pattern: 'same-place' } as const;
      const shows = random.uniform(0.75, 1);
      return spikeFault('spike-same-place', room, onset, random, told, (stroke) =>
        stroke.chance(shows) ? [position + stroke.normal(0, 0.004)] : [],
      );
    },
  },
  {
    name: 'spike-scattered',
    leastSides: 1,
    draw: (room, random, onset) =>
      spikeFault('spike-scattered', room, onset, random, { pattern: 'scattered' }, (stroke) =>
        Array.from({ length: stroke.integer(1, 5) }, () => stroke.uniform(0.1, 0.9)),
      ),
  },
  {
    name: 'ripple-per-turn',
    leastSides: 1,
    draw: (room, random, onset) => {
      const side = anySide(room, random);
      const part = random.uniform(0.15, 0.4);
      const phase = random.uniform(0, 2 * Math.PI);
      const told = { kind: 'stall-spike', pattern: 'once-per-turn', severity: part } as const;
      return fault('ripple-per-turn', onset, { ...told, side: namedSide(room, side) }, (condition) => ({
        ...condition,
        shapes: [
          ...condition.shapes,
          (i, position) =>
            i === side ? 1 + part * Math.sin((2 * Math.PI * position) / room.turn + phase) : 1,
        ],
      }));
    },
  },
  {
    name: 'bumps-per-turn',
    leastSides: 1,
    draw: (room, random, onset) => {
      const first = random.uniform(0, room.turn);
      const places = Array.from(
        { length: Math.floor((1 - first) / room.turn) + 1 },
        (_, i) => first + i * room.turn,
      );
      return spikeFault('bumps-per-turn', room, onset, random, { pattern: 'once-per-turn' }, () => places);
    },
  },
];

const drops: readonly PlainFaultKind[] = [false, true].map((whole) => ({
  name: whole ? 'dropped' : 'dropped-in-part',
  leastSides: 2,
  draw: (room, random, onset) => {
    const side = anySide(room, random);
    const keeps = random.uniform(0.05, 0.3);
    const from = whole ? -1 : random.uniform(0.1, 0.6);
    const to = whole ? 2 : from + random.uniform(0.15, 0.35);
    const taken = random.uniform(0, 0.8);
    const told = {
      kind: 'dropped-load',
      side: namedSide(room, side),
      severity: 1 - keeps,
      position: whole ? null : (from + to) / 2,
      alsoFits: ['uneven-sides'],
    } as const;
    const shape = (i: number, position: number) => {
      if (position < from || position > to) return 1;
      return i === side ? keeps : 1 + taken * (1 - keeps);
    };
    return fault(whole ? 'dropped' : 'dropped-in-part', onset, told, (condition) => ({
      ...condition,
      shapes: [...condition.shapes, shape],
    }));
  },
}));

const late: PlainFaultKind = {
  name: 'late',
  leastSides: 2,
  draw: (room, random, onset) => {
    const side = anySide(room, random);
    const laterS = random.uniform(0.6, 3);
    return fault(
      'late',
      onset,
      { kind: 'late-side', side: namedSide(room, side), severity: laterS },
      (condition) => ({
        ...condition,
        laterS: condition.laterS.map((value, i) => (i === side ? value + laterS : value)),
      }),
    );
  },
};

const heavy: PlainFaultKind = {
  name: 'heavy',
  leastSides: 1,
  draw: (room, random) => {
    const rated = room.facts.ratedAmps;
    const most = Math.max(...room.records.map((direction) => room.sides[0].amps[direction]));
    const times = rated === null ? random.uniform(2.3, 3) : (rated / most) * random.uniform(1.4, 2);
    return levelFault('heavy', room, 0, { kind: 'heavy-room', severity: times }, null, () => times);
  },
};

const short: PlainFaultKind = {
  name: 'short',
  leastSides: 1,
  draw: (room, random, onset) => {
    const direction: Direction = random.pick(room.records);
    const reaches = random.uniform(0.8, 0.94);
    const to = direction === 'extend' ? reaches : 1 - reaches;
    const stalls = room.stallS > 0 && random.chance(0.5);
    const told = { kind: 'short-travel', side: null, direction, severity: 1 - reaches } as const;
    return fault('short', onset, told, (condition, stroke) => {
      if (condition.direction === direction) return { ...condition, to, stalls };
      // No way back is short before a way there was.
      return stroke === onset ? condition : { ...condition, from: to };
    });
  },
};

const weak: PlainFaultKind = {
  name: 'weak',
  leastSides: 1,
  draw: (room, random, onset) => {
    const total = room.sides.reduce((sum, side) => sum + side.amps.extend, 0);
    const openVolts = random.uniform(9, 10.2) + room.supplyOhms * total;
    return fault(
      'weak',
      onset,
      { kind: 'weak-supply', side: null, severity: 12.6 - openVolts },
      (condition) => ({
        ...condition,
        openVolts,
      }),
    );
  },
};

const rebound: PlainFaultKind = {
  name: 'rebound',
  leastSides: 1,
  draw: (room, random, onset) => {
    const perStroke = random.uniform(0.003, 0.006);
    const serviceStroke = onset + 2 * random.integer(18, 26);
    const risen = perStroke * (serviceStroke - onset);
    const faster = random.uniform(2.5, 4) * perStroke;
    const told = {
      kind: 'draw-rebound',
      severity: faster,
      alsoFits: ['rising-draw'],
      onsetStroke: serviceStroke,
    } as const;
    return levelFault(
      'rebound',
      room,
      onset,
      told,
      null,
      (stroke) =>
        stroke < serviceStroke
          ? 1 + perStroke * (stroke - onset)
          : 1 + Math.min(0.8, 0.15 * risen + faster * (stroke - serviceStroke)),
      serviceStroke,
    );
  },
};

type SensorChange = (sensor: PlainSensor, room: PlainRoom, side: number, random: Random) => PlainSensor;

const sensors: readonly PlainFaultKind[] = (
  [
    [
      'clipped',
      (sensor, room, side, random) => ({
        ...sensor,
        rangeAmps: Math.min(...Object.values(room.sides[side].amps)) * random.uniform(0.8, 1.2),
      }),
    ],
    [
      'offset',
      (sensor, room, side, random) => ({
        ...sensor,
        offsetAmps:
          sensor.offsetAmps + Math.max(1.2, random.uniform(0.25, 0.6) * room.sides[side].amps.extend),
      }),
    ],
    ['scale-half', (sensor, _room, _side, random) => ({ ...sensor, scale: random.uniform(0.45, 0.7) })],
    ['scale-up', (sensor, _room, _side, random) => ({ ...sensor, scale: random.uniform(1.4, 2) })],
    ['gaps', (sensor, _room, _side, random) => ({ ...sensor, missed: random.uniform(0.2, 0.5) })],
    [
      'noise',
      (sensor, room, side, random) => ({
        ...sensor,
        noiseAmps: Math.max(1.2, random.uniform(0.35, 0.8) * room.sides[side].amps.extend),
      }),
    ],
    ['off', (sensor) => ({ ...sensor, off: true })],
  ] satisfies [string, SensorChange][]
).map(([doubt, change]) => ({
  name: `sensor-${doubt}`,
  leastSides: 1,
  draw: (room, random, onset) => {
    const side = anySide(room, random);
    const seed = random.bits();
    const told = { kind: 'sensor-doubt', side: namedSide(room, side), severity: 1 } as const;
    return fault(`sensor-${doubt}`, onset, told, (condition) => ({
      ...condition,
      // The same numbers with every stroke: a fault's amount is drawn once.
      sensors: condition.sensors.map((sensor, i) =>
        i === side ? change(sensor, room, side, new Random(seed)) : sensor,
      ),
    }));
  },
}));

const rate: PlainFaultKind = {
  name: 'sensor-rate',
  leastSides: 1,
  draw: (room, random, onset) => {
    const rateError = random.pick([0.5, 2, 0.8, 1.25]);
    const told = { kind: 'sensor-doubt', side: namedSide(room, null), severity: rateError } as const;
    return fault('sensor-rate', onset, told, (condition) => ({ ...condition, rateError }));
  },
};

/** Every fault of the plain fleet. */
export const PLAIN_FAULTS: readonly PlainFaultKind[] = [
  ...rises,
  share,
  ...spikes,
  ...drops,
  late,
  heavy,
  short,
  weak,
  rebound,
  ...sensors,
  rate,
];
