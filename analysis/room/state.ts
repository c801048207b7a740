import { beginChannel, type Channel } from '../baseline/channel.ts';
import { beginClockMemory, type ClockMemory } from '../findings/clockRate.ts';
import { beginReboundMemory, type ReboundMemory } from '../findings/drawRebound.ts';
import type { HeavyMemory } from '../findings/heavyRoom.ts';
import { beginLagMemory, type LagMemory } from '../findings/lateSide.ts';
import { beginLoadMemory, type LoadMemory } from '../findings/loadMemory.ts';
import type { RecentFlags } from '../findings/recent.ts';
import type { ScaleMemory } from '../findings/sensorScale.ts';
import { beginTravelMemory, type TravelMemory } from '../findings/shortTravel.ts';
import { beginSpikeMemory, type SpikeMemory } from '../findings/spikeMemory.ts';
import { beginStayMemory, type StayMemory } from '../findings/stay.ts';
import { beginZeroMemory, type ZeroMemory } from '../findings/zeroChange.ts';
import { DIRECTIONS, type Direction, type RoomDescription } from '../trace.ts';
import type { Warning } from '../warning.ts';

/**
 * All that the fold of a room's history keeps: plain JSON, of a size that does not grow with the history. Restored
 * by JSON.parse it goes on as if it had never been put away.
 */
export interface RoomState {
  readonly roomId: string;
  readonly room: RoomDescription;
  channels: Channel[];
  usable: Record<Direction, number>;
  /** Strokes in a row that could not be used. */
  unusableInARow: number;
  stay: StayMemory;
  load: LoadMemory;
  spikes: SpikeMemory;
  lag: LagMemory;
  travel: TravelMemory;
  rebound: ReboundMemory;
  heavy: Record<string, HeavyMemory>;
  scale: Record<string, ScaleMemory>;
  clock: ClockMemory;
  zero: Record<string, ZeroMemory>;
  recent: RecentFlags;
  open: Warning[];
  /** The latest stroke's share above its normal, by side and direction, for the headline. */
  latest: { readonly side: string; readonly percent: number | null } | null;
}

export function beginRoom(roomId: string, room: RoomDescription): RoomState {
  return {
    roomId,
    room,
    channels: room.sides.flatMap((side) => DIRECTIONS.map((direction) => beginChannel(side, direction))),
    usable: { extend: 0, retract: 0 },
    unusableInARow: 0,
    stay: beginStayMemory(),
    load: beginLoadMemory(room.sides),
    spikes: beginSpikeMemory(),
    lag: beginLagMemory(),
    travel: beginTravelMemory(),
    rebound: beginReboundMemory(),
    heavy: Object.fromEntries(room.sides.map((side) => [side, { amps: [], stall: [] }])),
    scale: Object.fromEntries(
      room.sides.map((side) => [side, { running: [], inrush: [], endStop: [], duration: [] }]),
    ),
    clock: beginClockMemory(),
    zero: Object.fromEntries(room.sides.map((side) => [side, beginZeroMemory()])),
    recent: {},
    open: [],
    latest: null,
  };
}

export function channelOf(state: RoomState, side: string, direction: Direction): Channel | undefined {
  return state.channels.find((channel) => channel.side === side && channel.direction === direction);
}
