import { type Conditions, conditionsAt } from '../baseline/conditions.ts';
import { type CopperRead, copperReading, MOST_DAYS } from '../baseline/copper.ts';
import { stallFollowsSupply } from '../baseline/stallFollowsSupply.ts';
import { stallsAsEver } from '../baseline/stallsAsEver.ts';
import { DAY_MS, type StrokeEvent } from '../history.ts';
import type { DoneAnalysis } from '../measures.ts';
import { channelOf, type RoomState } from '../roomState.ts';
import { cutsPeaksAlone } from './sensorDoubt/cutsPeaksAlone.ts';
import { stopFollowsLoad } from './sensorDoubt/stopFollowsLoad.ts';

/** What a stroke was made under, by its record; `copper`: what the copper of the side that asks read. */
export function conditionsOf(
  { room: { nominalVolts } }: RoomState,
  { ambientC, atMs }: StrokeEvent,
  { supplyVolts }: DoneAnalysis,
  copper: CopperRead | null = null,
): Conditions {
  return conditionsAt({ supplyVolts, nominalVolts, ambientC, atMs }, copper);
}

/** The same with what one side's copper reads, or last read; after `noteStay`, which tells how long the motor rested. */
export function sideConditions(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  side: string,
): Conditions {
  return conditionsOf(state, event, analysis, copperAt(state, event, analysis, side));
}

/** What a side's copper reads on this stroke, or read on the latest one that it could be read on; null: neither, or its end tells of the load. */
function copperAt(
  state: RoomState,
  event: StrokeEvent,
  analysis: DoneAnalysis,
  side: string,
): CopperRead | null {
  const channel = channelOf(state, side, analysis.direction);
  if (stopFollowsLoad(state, side) || !stallFollowsSupply(channel)) return null;
  const reading = stallsAsEver(channel, analysis) ? copperOf(state, analysis, side) : null;
  const read = reading === null ? null : sharedCopper(state, analysis, side, reading);
  if (read !== null) return read;
  const last = channel?.copper ?? null;
  if (last === null) return null;
  const days = Math.max(0, event.atMs - last.atMs) / DAY_MS;
  return days > MOST_DAYS ? null : { degrees: last.degrees, days, isShared: last.isShared };
}

/** What a side's copper reads on this stroke, on a sensor that reaches as far as its stall. */
function copperOf({ stay }: RoomState, analysis: DoneAnalysis, side: string): number | null {
  return cutsPeaksAlone(analysis, side) ? null : copperReading(analysis, side, stay.restedMs);
}

/** Two readings of one stroke that are further apart, degrees, are not both of the weather: a guess, no source. */
const MOST_APART_C = 10;

/**
 * Weather is the same for all sides: no side's copper counts as colder than the least cold of them, and none is read where
 * they contradict each other.
 */
function sharedCopper(
  state: RoomState,
  analysis: DoneAnalysis,
  side: string,
  reading: number,
): CopperRead | null {
  const usualOf = (name: string) => {
    const weather = channelOf(state, name, analysis.direction)?.weather;
    return weather?.by === 'copper' ? weather.scale.usual : null;
  };
  const usual = usualOf(side);
  const others = state.room.sides.flatMap((name) => {
    const there = name === side ? null : copperOf(state, analysis, name);
    const usualThere = usualOf(name);
    return there === null || usualThere === null ? [] : [there - usualThere];
  });
  if (usual === null || others.length === 0) return { degrees: reading, days: 0, isShared: false };
  if (others.some((other) => Math.abs(other - (reading - usual)) > MOST_APART_C)) return null;
  return { degrees: Math.max(reading, usual + Math.max(...others)), days: 0, isShared: true };
}

/** Remembers what the copper of a stroke read; after everything else was told of it. */
export function noteCopper(state: RoomState, event: StrokeEvent, analysis: DoneAnalysis): void {
  for (const side of Object.keys(analysis.sides)) {
    const read = copperAt(state, event, analysis, side);
    const channel = channelOf(state, side, analysis.direction);
    if (channel === undefined || read === null || read.days > 0) continue;
    channel.copper = { degrees: read.degrees, isShared: read.isShared, atMs: event.atMs };
  }
}
