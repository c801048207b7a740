import { ONE_PLACE } from '../findings/stallSpike/isEchoOf.ts';
import { nameAll, nameSide } from '../names.ts';
import type { RoomState } from '../roomState.ts';
import { SEVERITIES, type Warning, type WarningKind } from '../warning.ts';

/** Kinds that can stand on each side by itself. */
export const BY_SIDE: ReadonlySet<WarningKind> = new Set(['stall-spike', 'sensor-doubt', 'dropped-load']);

/**
 * Peaks of both sides at one place are one trouble's where neither is so many times as high as the other: else one side jolts the
 * other. A guess, no source.
 */
const ALIKE_HEIGHTS = 1.25;

/**
 * What a detector says of one side. Where both sides of a room are at fault alike, that is one warning, of no side: the room's
 * state keeps it in parts, which bear one id, that of the first.
 */
type Part = Pick<Warning, 'kind' | 'side' | 'position' | 'pattern' | 'evidence'>;

/** The open part of the other side that says the same as this one would; undefined: there is none. */
export function sameOnOtherSide({ open, room }: RoomState, part: Part): Warning | undefined {
  if (room.sides.length !== 2 || part.side === null || !BY_SIDE.has(part.kind)) return undefined;
  return open.find(
    (other) =>
      other.kind === part.kind && other.side !== null && other.side !== part.side && isAlike(other, part),
  );
}

function isAlike(one: Part, other: Part): boolean {
  if (one.evidence.doubt !== other.evidence.doubt || one.pattern !== other.pattern) return false;
  if ((one.position === null) !== (other.position === null)) return false;
  if (Math.abs((one.position ?? 0) - (other.position ?? 0)) > ONE_PLACE) return false;
  const [lower, higher] = [one, other].map(heightOf).sort((a, b) => a - b);
  return higher <= ALIKE_HEIGHTS * lower;
}

/** The height of a peak, percent of the running current; of whatever else the same number. */
const heightOf = ({ evidence }: Part): number => evidence.heightPercent ?? 1;

/** The warnings as they are told: parts of one id as one, by the gravest of them. `parts`: the one updated last comes last. */
export function asTold(parts: readonly Warning[], sides: readonly string[]): Warning[] {
  const byId = new Map<string, Warning[]>();
  for (const part of parts) byId.set(part.id, [...(byId.get(part.id) ?? []), part]);
  return [...byId.values()].map((own) => (own.length === 1 ? own[0] : ofBoth(own, sides)));
}

function ofBoth(parts: readonly Warning[], sides: readonly string[]): Warning {
  const gravest = parts.reduce((most, part) => (isGraver(part, most) ? part : most));
  return {
    ...gravest,
    side: null,
    latestStrokeId: parts[parts.length - 1].latestStrokeId,
    headline: gravest.headline.replace(nameSide(gravest.side ?? '', sides), nameAll(sides)),
  };
}

function isGraver(one: Warning, other: Warning): boolean {
  const [a, b] = [one, other].map(({ severity }) => SEVERITIES.indexOf(severity));
  return a > b || (a === b && heightOf(one) > heightOf(other));
}
