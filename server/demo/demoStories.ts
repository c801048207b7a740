import type { ModelRoomName } from './demoModels.ts';
import { badTooth, proudFastener } from './simulator/faults/bumps.ts';
import type { PlannedFault } from './simulator/faults/fault.ts';
import { frictionRise } from './simulator/faults/friction.ts';
import { shareShift } from './simulator/faults/share.ts';
import { weakSupply } from './simulator/faults/travel.ts';
import type { PlannedService } from './simulator/plannedService.ts';
import type { SimulatedRoom } from './simulator/room.ts';

/** What one room of the demo goes through. */
export interface RoomStory {
  readonly model: ModelRoomName;
  readonly story: string;
  readonly strokes: number;
  /** How far back the first stroke lies. */
  readonly days: number;
  readonly services?: readonly PlannedService[];
  readonly fault?: (room: SimulatedRoom) => PlannedFault;
  /** Sides that the logger has a clamp on, by index; all of them if not said. */
  readonly clampedSides?: readonly number[];
  readonly withSupply?: boolean;
}

interface CoachStory {
  readonly name: string;
  readonly model: string;
  readonly year: number;
  readonly notes: string;
  readonly logger: string;
  readonly rooms: readonly RoomStory[];
}

const TWO_YEARS = 728;

export const COACH_STORIES: readonly CoachStory[] = [
  {
    name: 'Stock 114',
    model: 'Tallowmere 32',
    year: 2021,
    notes: 'On consignment; was a full-time home for two winters.',
    logger: 'Logger in the pass-through, stock 114',
    rooms: [
      {
        model: 'tallowmereLiving',
        story: 'Friction creeps up on the front side.',
        strokes: 53,
        days: TWO_YEARS,
        fault: (room) => frictionRise(room, { onsetStroke: 24, sideIndex: 0, step: 0, perStroke: 0.011 }),
      },
      {
        model: 'tallowmereBedroom',
        story: 'Clear; cleaned once in passing.',
        strokes: 46,
        days: TWO_YEARS,
        services: [
          { beforeStroke: 30, kind: 'cleaned', side: null, notes: 'Swept out leaves, nothing else found.' },
        ],
      },
    ],
  },
  {
    name: 'Stock 131',
    model: 'Tallowmere 32',
    year: 2022,
    notes: 'Demonstrator, goes out on hire in summer.',
    logger: 'Logger under the bed, stock 131',
    rooms: [
      {
        model: 'tallowmereLiving',
        story: 'A fastener of the rear rack has backed out and catches at one place.',
        strokes: 44,
        days: 700,
        fault: (room) =>
          proudFastener(room, {
            onsetStroke: 31,
            sideIndex: 1,
            position: 0.37,
            widthMetres: 0.014,
            part: 1.5,
          }),
      },
      {
        model: 'tallowmereBedroom',
        story: 'Friction has begun to creep up on the rear side: a forecast tells how long it will do.',
        strokes: 38,
        days: 690,
        fault: (room) => frictionRise(room, { onsetStroke: 14, sideIndex: 1, step: 0, perStroke: 0.008 }),
      },
    ],
  },
  {
    name: 'Stock 078',
    model: 'Brackenfold 36',
    year: 2019,
    notes: 'Oldest coach on the lot.',
    logger: 'Logger in the basement, stock 078',
    rooms: [
      { model: 'brackenfoldLiving', story: 'Clear.', strokes: 50, days: TWO_YEARS },
      {
        model: 'brackenfoldKitchen',
        story: 'A gear with a broken tooth: a bump once a turn.',
        strokes: 48,
        days: TWO_YEARS,
        fault: (room) =>
          badTooth(room, { onsetStroke: 33, sideIndex: 0, turnPart: 0.4, widthMetres: 0.016, part: 0.8 }),
      },
      {
        model: 'brackenfoldBedroom',
        story: 'The right side has come to carry more than its share.',
        strokes: 42,
        days: TWO_YEARS,
        fault: (room) => shareShift(room, { onsetStroke: 25, sideIndex: 1, shift: 0.13 }),
      },
    ],
  },
  {
    name: 'Stock 102',
    model: 'Brackenfold 36',
    year: 2023,
    notes: 'Repaired under warranty.',
    logger: 'Logger in the basement, stock 102',
    rooms: [
      {
        model: 'brackenfoldLiving',
        story: 'Sound, but at one camp the battery was at its end.',
        strokes: 40,
        days: 640,
        fault: (room) => weakSupply(room, { onsetStroke: 26, untilStroke: 30, runningVolts: 9.8 }),
      },
      { model: 'brackenfoldKitchen', story: 'Clear.', strokes: 36, days: 640 },
      {
        model: 'brackenfoldBedroom',
        story: 'The left side dragged until its bearing block was replaced: compare before and after.',
        strokes: 52,
        days: 660,
        fault: (room) =>
          frictionRise(room, { onsetStroke: 16, untilStroke: 36, sideIndex: 0, step: 0.32, perStroke: 0 }),
        services: [
          {
            beforeStroke: 36,
            kind: 'block-replaced',
            side: 'left',
            notes: 'Upper bearing block cracked through; replaced, column cleaned.',
          },
        ],
      },
    ],
  },
  {
    name: 'Stock 140',
    model: 'Pebblewick 27',
    year: 2024,
    notes: 'Came in two weeks ago.',
    logger: 'Logger in the wardrobe, stock 140',
    rooms: [
      { model: 'pebblewickLounge', story: 'Just arrived: still learning.', strokes: 3, days: 13 },
      {
        model: 'pebblewickWardrobe',
        story: 'Clear; recorded without its supply.',
        strokes: 22,
        days: 400,
        withSupply: false,
      },
    ],
  },
  {
    name: 'Gulwane',
    model: 'Pebblewick 27',
    year: 2018,
    notes: 'Belongs to A. Wren; looked after by us.',
    logger: 'Owner’s logger',
    rooms: [
      {
        model: 'pebblewickLounge',
        story: 'Clear; lubricated once, which changed nothing.',
        strokes: 47,
        days: TWO_YEARS,
        services: [{ beforeStroke: 20, kind: 'lubricated', side: null, notes: null }],
      },
      {
        model: 'pebblewickBedroom',
        story: 'One clamp only: the front side was recorded, the rear never.',
        strokes: 33,
        days: 560,
        clampedSides: [0],
      },
    ],
  },
];
