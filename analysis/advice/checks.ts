import type { Doubt } from '../measures.ts';
import type { Drive } from '../trace.ts';
import type { SpikePattern, WarningKind } from '../warning.ts';
import { CAUTIONS } from './cautions.ts';

type Caution = keyof typeof CAUTIONS;

/** What to mind at each check, by its text; complete once this file is read. */
const MINDED = new Map<string, readonly Caution[]>();

/** A check, and the cautions that must stand right beside it. */
function mind(check: string, cautions: readonly Caution[]): string {
  MINDED.set(check, cautions);
  return check;
}

/** What takes the place of a check while the room must stay where it is, by its text; null: the check waits. */
const AT_REST = new Map<string, string | null>();

/** A check that moves the room, the cautions beside it, and what is checked while the room must stay where it is. */
function move(check: string, cautions: readonly Caution[], atRest: string | null = null): string {
  AT_REST.set(check, atRest);
  return mind(check, cautions);
}

/** Of some checks those that leave the room where it is: for a room that nobody should move. */
export function checksAtRest(checks: readonly string[]): string[] {
  return checks.flatMap((check) => {
    const atRest = AT_REST.get(check);
    return atRest === undefined ? [check] : (atRest ?? []);
  });
}

/** The cautions that belong to a check; none where the check is of an older version. */
export function cautionsOfCheck(check: string): string[] {
  return (MINDED.get(check) ?? []).map((caution) => CAUTIONS[caution]);
}

/**
 * What to check, in the order a technician would, by kind of trouble and drive, and by what is doubted of a record. Facts
 * of the trade: common practice, no source.
 */
export function checksFor(
  kind: WarningKind,
  drive: Drive,
  pattern: SpikePattern | null,
  doubt: Doubt | null = null,
): string[] {
  switch (kind) {
    case 'rising-draw':
    case 'draw-rebound':
    case 'heavy-room':
      return [...LOOK_FIRST, ...FRICTION[drive], ...(kind === 'rising-draw' ? [] : WEIGHT[drive])];
    case 'uneven-sides':
    case 'dropped-load':
    case 'late-side':
      return [...UNEVEN, ...GEAR[drive]];
    case 'stall-spike':
      return pattern === 'same-place' ? [...ONE_PLACE, ...FASTENERS[drive]] : [...ANY_PLACE, ...GEAR[drive]];
    case 'short-travel':
      return [...IN_THE_WAY, ...UNEVEN];
    case 'weak-supply':
      return [...SUPPLY];
    case 'sensor-doubt':
      return doubt === null
        ? [...SENSOR]
        : [...(OF_DOUBT[doubt] ?? []), ...(doubt === 'clock' ? [] : SENSOR)];
  }
}

const IN_THE_WAY = [
  mind('Look for anything in the way of the room, inside and outside.', ['travel']),
  mind('See that no lock or bar that holds the room for travel is still in place.', ['travel']),
];

const SUPPLY = [
  mind("Measure the battery's voltage at rest and while the room moves.", ['travel']),
  mind('Look at the terminals and grounds between battery and controller for looseness and corrosion.', [
    'supply',
    'fuse',
  ]),
  mind('Charge the battery, or connect to shore power, and run the room again.', ['travel']),
];

const SENSOR = [
  mind('See that the clamp is fully closed around one wire only, the right way round.', ['supply']),
  mind('Set its zero with no current flowing, and compare it with a second meter.', ['supply']),
];

/** What is checked before the clamp and its zero, which have nothing to do with a date. */
const OF_DOUBT: Partial<Record<Doubt, readonly string[]>> = {
  clock: [
    mind(
      'Compare the date and time of the logger with a watch, and set them; see that it keeps them without power.',
      ['supply'],
    ),
    mind('See that it records as many samples a second as it says.', ['supply']),
    mind('Correct the date of the strokes that came with a wrong one.', ['manual']),
  ],
  gaps: [mind('Look at the plugs and the link between sensor and logger: samples are missing.', ['supply'])],
  clipped: [
    mind("See that the sensor's range goes beyond the current at which the motor stalls.", ['supply']),
  ],
  scale: [
    mind('See that nobody switched the range of the sensor, and that the wire goes through the clamp once.', [
      'supply',
    ]),
  ],
  flat: [mind('See that the sensor is plugged in, has power, and is on the wire of that motor.', ['supply'])],
};

const LOOK_FIRST = [
  mind(
    'Look along the whole travel, inside and outside, for anything that drags, and at the seals for folds.',
    ['travel'],
  ),
];

const UNEVEN = [
  move(
    'Measure from wall to flange at all corners with the room fully in: one corner that differs shows the side.',
    ['travel'],
    mind(
      'Measure from wall to flange at all corners, with the room where it is: one corner that differs shows the side.',
      ['travel'],
    ),
  ),
  move(
    'Watch both sides through a whole stroke with a second person at the switch: see which one lags or lifts.',
    ['travel'],
  ),
];

const ONE_PLACE = [
  move(
    'Run the room to that place and stop. Then disconnect the supply, and look at the rack and what is near it there.',
    ['travel', 'supply'],
    mind('Find that place along the rack, and look at the rack and what is near it there.', [
      'travel',
      'supply',
    ]),
  ),
];

const ANY_PLACE = [
  move('Watch and listen through a whole stroke: the place may change from stroke to stroke.', ['travel']),
];

const FRICTION: Record<Drive, readonly string[]> = {
  'in-wall': [
    mind(
      'Clean the wall racks and their channels; plastic shoes that slide in aluminium bind on dirt and in the cold.',
      ['travel', 'supply'],
    ),
    mind(
      'After cleaning, a thin dry PTFE film on the shoes is usual; opinions differ and some manuals forbid it: the manual decides.',
      ['manual'],
    ),
    move(
      'With both motors disengaged as the manual says, the room should move by hand: if it does not, find what binds.',
      ['travel', 'supply', 'weight', 'manual'],
    ),
  ],
  'through-frame': [
    mind(
      'Clean the teeth and the rams. Do not lubricate them: wheels and glides of plastic run dry, and sticky or silicone products hold dirt and burn the motor.',
      ['travel', 'supply'],
    ),
    move(
      'Listen where it squeals: the roller at the inner end of the ram, or the bolt through the gear pack, which needs the weight off it first.',
      ['travel', 'weight'],
      mind(
        'Look at the roller at the inner end of the ram, and at the bolt through the gear pack, which needs the weight off it first.',
        ['travel', 'supply', 'weight'],
      ),
    ),
  ],
  cable: [
    mind('Look at the cables for broken strands and at the pulleys for ones that do not turn.', [
      'travel',
      'supply',
    ]),
    mind("Check the cables' tension against the manual; too tight drags, too slack lets the room rack.", [
      'weight',
      'manual',
    ]),
  ],
  other: [
    mind("Clean the moving parts and look for wear, as the maker's manual says.", ['travel', 'supply']),
  ],
};

const WEIGHT: Record<Drive, readonly string[]> = {
  'in-wall': [
    mind(
      'See whether the rollers carry the room: racks only guide, and a heavy draw means that they carry weight.',
      ['travel', 'weight'],
    ),
  ],
  'through-frame': [
    move(
      'See whether the room sits square on its rams and its wheels turn.',
      ['travel'],
      mind('See whether the room sits square on its rams.', ['travel']),
    ),
  ],
  cable: [mind('See whether the room rests on its rollers or slides.', ['travel'])],
  other: [mind('See what carries the weight of the room.', ['travel', 'weight'])],
};

const FASTENERS: Record<Drive, readonly string[]> = {
  'in-wall': [
    mind(
      'Look for a rack fastener that has backed out, on the lower rack first: there is little clearance for a head. Seat it.',
      ['travel', 'supply', 'weight', 'manual'],
    ),
    mind('Look for a dent or a chip of metal in the rack at that place.', ['travel', 'supply']),
  ],
  'through-frame': [
    mind(
      'Look for a fastener, a dent or dirt on the ram at that place, and for floor covering that catches.',
      ['travel', 'supply'],
    ),
  ],
  cable: [
    mind('Look for a frayed cable or a fastener that the cable or room catches at that place.', [
      'travel',
      'supply',
    ]),
  ],
  other: [mind('Look for a fastener that stands proud, a dent or dirt at that place.', ['travel', 'supply'])],
};

const GEAR: Record<Drive, readonly string[]> = {
  'in-wall': [
    move('Watch the bearing block: it should follow its shaft at once and never pivot in its rack.', [
      'travel',
    ]),
    mind(
      'Look for broken teeth on the gear and for a broken shoe. Replacing a block or gear means taking the column and racks apart: work for a licensed technician.',
      ['travel', 'supply', 'weight', 'manual'],
    ),
  ],
  'through-frame': [
    mind(
      'Count and look at the teeth of the gear and rack for wear and breaks; the gear has 15 or 18 of them as a rule.',
      ['travel', 'supply'],
    ),
    move('See whether the cross shaft turns both gears together.', ['travel']),
  ],
  cable: [mind('Look at the drum and chain for a slipped or broken link.', ['travel', 'supply'])],
  other: [mind('Look at the gear and what it drives for broken teeth and slip.', ['travel', 'supply'])],
};
