import type { Drive } from '../trace.ts';
import type { SpikePattern, WarningKind } from '../warning.ts';

/**
 * What to check, in the order a technician would, by kind of trouble and drive. Facts of the trade: common practice,
 * no source.
 */
export function checksFor(kind: WarningKind, drive: Drive, pattern: SpikePattern | null): string[] {
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
      return ['Look for anything in the way of the room, inside and outside.', ...UNEVEN];
    case 'weak-supply':
      return [
        "Measure the battery's voltage at rest and while the room moves.",
        'Look at the terminals and grounds between battery and controller for looseness and corrosion.',
        'Charge the battery, or connect to shore power, and run the room again.',
      ];
    case 'sensor-doubt':
      return [
        'See that the clamp is fully closed around one wire only, the right way round.',
        'Set its zero with no current flowing, and compare it with a second meter.',
      ];
  }
}

const LOOK_FIRST = [
  'Look along the whole travel, inside and outside, for anything that drags, and at the seals for folds.',
];

const UNEVEN = [
  'Measure from wall to flange at all corners with the room fully in: one corner that differs shows the side.',
  'Watch both sides through a whole stroke with a second person at the switch: see which one lags or lifts.',
];

const ONE_PLACE = ['Run the room to that place, stop, and look at the rack and its neighbourhood there.'];

const ANY_PLACE = [
  'Watch and listen to that side through a whole stroke: the place may change from stroke to stroke.',
];

const FRICTION: Record<Drive, readonly string[]> = {
  'in-wall': [
    'Clean the wall racks and their channels; plastic shoes that slide in aluminium bind on dirt and in the cold.',
    'After cleaning, a thin dry PTFE film on the shoes is usual; opinions differ and some manuals forbid it: the manual decides.',
    'With both motors disengaged as the manual says, the room should move by hand: if it does not, find what binds.',
  ],
  'through-frame': [
    'Clean the teeth and the rams. Do not lubricate them: wheels and glides of plastic run dry, and sticky or silicone products hold dirt and burn the motor.',
    'Listen where it squeals: the roller at the inner end of the ram, or the bolt through the gear pack, which needs the weight off it first.',
  ],
  cable: [
    'Look at the cables for broken strands and at the pulleys for ones that do not turn.',
    "Check the cables' tension against the manual; too tight drags, too slack lets the room rack.",
  ],
  other: ["Clean the moving parts and look for wear, as the maker's manual says."],
};

const WEIGHT: Record<Drive, readonly string[]> = {
  'in-wall': [
    'See whether the rollers carry the room: racks only guide, and a heavy draw means that they carry weight.',
  ],
  'through-frame': ['See whether the room sits square on its rams and its wheels turn.'],
  cable: ['See whether the room rests on its rollers or slides.'],
  other: ['See what carries the weight of the room.'],
};

const FASTENERS: Record<Drive, readonly string[]> = {
  'in-wall': [
    'Look for a rack fastener that has backed out, on the lower rack first: there is little clearance for a head. Seat it.',
    'Look for a dent or a chip of metal in the rack at that place.',
  ],
  'through-frame': [
    'Look for a fastener, a dent or dirt on the ram at that place, and for floor covering that catches.',
  ],
  cable: ['Look for a frayed cable or a fastener that the cable or room catches at that place.'],
  other: ['Look for a fastener that stands proud, a dent or dirt at that place.'],
};

const GEAR: Record<Drive, readonly string[]> = {
  'in-wall': [
    'Watch the bearing block: it should follow its shaft at once and never pivot in its rack.',
    'Look for broken teeth on the gear and for a broken shoe. Replacing a block or gear means taking the column and racks apart: work for a licensed technician.',
  ],
  'through-frame': [
    'Count and look at the teeth of the gear and rack for wear and breaks; the gear has 15 or 18 of them as a rule.',
    'See whether the cross shaft turns both gears together.',
  ],
  cable: ['Look at the drum and chain for a slipped or broken link.'],
  other: ['Look at the gear and what it drives for broken teeth and slip.'],
};
