import { beginChannel, type Channel } from './baseline/channel.ts';
import { beginLending, type Lending } from './baseline/lending.ts';
import type { Lent } from './baseline/lent.ts';
import { beginComings, type Comings } from './findings/comesBack.ts';
import { beginReboundMemory, type ReboundMemory } from './findings/drawRebound/reboundMemory.ts';
import { beginHeavyMemory, type HeavyMemory } from './findings/heavyRoom/heavyMemory.ts';
import type { HowOftenOfSides } from './findings/howOften.ts';
import { beginLagMemory, type LagMemory } from './findings/lateSide/lagMemory.ts';
import { beginLoadMemory, type LoadMemory } from './findings/load/loadMemory.ts';
import type { RecentFlags } from './findings/recent.ts';
import { beginClockMemory, type ClockMemory } from './findings/sensorDoubt/clockMemory.ts';
import { beginCutMemory, type CutMemory } from './findings/sensorDoubt/cutMemory.ts';
import { beginRestMemory, type RestMemory } from './findings/sensorDoubt/restMemory.ts';
import { beginScaleMemory, type ScaleMemory } from './findings/sensorDoubt/scaleMemory.ts';
import { beginSignMemory, type SignMemory } from './findings/sensorDoubt/turnedSensor.ts';
import { beginZeroMemory, type ZeroMemory } from './findings/sensorDoubt/zeroMemory.ts';
import { beginTravelMemory, type TravelMemory } from './findings/shortTravel/travelMemory.ts';
import { beginSpikeMemory, type SpikeMemory } from './findings/stallSpike/spikeMemory.ts';
import { beginStayMemory, type StayMemory } from './findings/stay.ts';
import { DIRECTIONS, type Direction, type RoomDescription } from './trace.ts';
import type { Warning } from './warning.ts';

/**
 * All that the fold of a room's history keeps: plain JSON, of a size that does not grow with the history. Restored
 * by JSON.parse it goes on as if it had never been put away.
 */
export interface RoomState {
  readonly roomId: string;
  readonly room: RoomDescription;
  /** Baselines, side by side, each in both directions. */
  channels: Channel[];
  /** What the room's own first strokes will lend to others, by channel. */
  lending: Lending[];
  /** Strokes that were measured, not set aside and moved the room, by direction. */
  usable: Record<Direction, number>;
  /** Strokes in a row that could not be used. */
  unusableInARow: number;
  stay: StayMemory;
  load: LoadMemory;
  spikes: SpikeMemory;
  /** Of each side that is said to have lost its load. */
  readonly dropped: Readonly<Record<Direction, HowOftenOfSides>>;
  lag: LagMemory;
  travel: TravelMemory;
  rebound: ReboundMemory;
  heavy: Record<string, HeavyMemory>;
  scale: Record<string, ScaleMemory>;
  cut: Record<string, CutMemory>;
  clock: ClockMemory;
  zero: Record<string, ZeroMemory>;
  /** By side, what its sensor reads at rest. */
  rests: Record<string, RestMemory>;
  signs: Record<string, SignMemory>;
  /** What was said of each side's record, and of all together. */
  doubts: Record<string, Comings>;
  doubtsOfAll: Comings;
  recent: RecentFlags;
  /** The warnings that stand, in the order in which they were last told. */
  open: Warning[];
  /** By warning: how many strokes in a row have found less than is told, and how often it was told as less already. */
  calmer: Record<string, { readonly strokes: number; readonly falls: number }>;
  /** Whether the latest stroke lay beyond its normal in what no single odd stroke explains (`isSuspicious`). */
  suspicious: boolean;
  /**
   * By how many per cent the latest stroke drew more than its normal (negative: less), of the side furthest from it, and
   * whether that is beyond its limits: for the headline. Null while no side has a normal.
   */
  latest: {
    readonly side: string;
    readonly direction: Direction;
    readonly percent: number;
    readonly beyond: boolean;
  } | null;
}

/** What is lent to a room, in the order of its channels: side by side, each in both directions. */
export type LentToRoom = readonly (Lent | null)[];

/** `lent`: what rooms of the same coach model lend; empty: nothing. */
export function beginRoom(roomId: string, room: RoomDescription, lent: LentToRoom = []): RoomState {
  const bySide = <Memory>(begin: () => Memory) =>
    Object.fromEntries(room.sides.map((side) => [side, begin()]));
  const places = room.sides.flatMap((side) => DIRECTIONS.map((direction) => ({ side, direction })));
  return {
    roomId,
    room,
    channels: places.map(({ side, direction }, place) => beginChannel(side, direction, lent[place] ?? null)),
    lending: places.map(({ side, direction }) => beginLending(side, direction)),
    usable: { extend: 0, retract: 0 },
    unusableInARow: 0,
    stay: beginStayMemory(),
    load: beginLoadMemory(room.sides),
    spikes: beginSpikeMemory(),
    dropped: { extend: {}, retract: {} },
    lag: beginLagMemory(),
    travel: beginTravelMemory(),
    rebound: beginReboundMemory(),
    heavy: bySide(beginHeavyMemory),
    scale: bySide(beginScaleMemory),
    cut: bySide(beginCutMemory),
    clock: beginClockMemory(),
    signs: bySide(beginSignMemory),
    zero: bySide(beginZeroMemory),
    rests: bySide(beginRestMemory),
    doubts: bySide(beginComings),
    doubtsOfAll: beginComings(),
    recent: {},
    open: [],
    calmer: {},
    suspicious: false,
    latest: null,
  };
}

/** The baseline of a side in a direction; undefined for a side that the room does not have. */
export function channelOf(state: RoomState, side: string, direction: Direction): Channel | undefined {
  return state.channels.find((channel) => channel.side === side && channel.direction === direction);
}
