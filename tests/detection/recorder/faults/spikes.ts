import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { AddedLoad } from '../condition.ts';
import type { Random } from '../random.ts';
import type { RecorderRoom } from '../room.ts';
import { always, type FaultKind, plan } from './fault.ts';

/** Height and half width of a short peak that the room's own logger can show. */
interface Peak {
  /** As a part of the side's running current. */
  readonly rise: number;
  /** Standard deviation along the travel, as a part of it. */
  readonly width: number;
}

function drawPeak(room: RecorderRoom, side: number, random: Random): Peak {
  const { runningAmps, runUpS } = room.motors[side];
  const { rateHz, noiseAmps } = room.logger;
  const shortestS = Math.max(0.9 * runUpS, 1.2 / Math.min(rateHz, 20));
  const widthMm = random.scaled(3, 8);
  const rise = Math.max(random.scaled(0.3, 1.1), (7 * noiseAmps) / runningAmps);
  return { rise, width: Math.max(widthMm / 1000 / room.travelMetres, shortestS / room.durationS) };
}

/** Peaks of one side at given positions, heights in parts of the peak's own. */
function peaksAt(
  room: RecorderRoom,
  faulty: number,
  { rise, width }: Peak,
  places: readonly { readonly position: number; readonly height: number }[],
): AddedLoad {
  const { runningAmps, noLoadAmps } = room.motors[faulty];
  const full = (rise * runningAmps) / (runningAmps - noLoadAmps);
  return (side, position) => {
    if (side !== faulty) return 0;
    let highest = 0;
    for (const place of places) {
      const away = (position - place.position) / width;
      if (Math.abs(away) < 4) highest = Math.max(highest, place.height * full * Math.exp(-0.5 * away * away));
    }
    return highest;
  };
}

/** A proud fastener or a dent in the track, met in both directions. */
export const spikeAtPlace: FaultKind = {
  name: 'spike-place',
  fits: always,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, room.motors.length - 1);
    const peak = drawPeak(room, faulty, random);
    const position = random.between(0.12, 0.88);
    const seen = random.pick([1, 1, 0.9, 0.8]);
    return plan(
      'spike-place',
      room,
      {
        kind: 'stall-spike',
        pattern: 'same-place',
        severity: peak.rise,
        onsetStroke,
        position,
        side: namedSide(room, faulty),
      },
      (condition, _, source) => {
        if (!source.chance(seen)) return condition;
        const height = Math.exp(0.12 * source.normal());
        const moved = position + 0.002 * source.normal();
        return {
          ...condition,
          added: [...condition.added, peaksAt(room, faulty, peak, [{ position: moved, height }])],
        };
      },
    );
  },
};

/** A damaged tooth of the drive's gear, which meets the rack once in each turn. */
export const spikeOncePerTurn: FaultKind = {
  name: 'spike-turn',
  fits: ({ gearTurn }) => gearTurn > 0.05 && gearTurn < 0.28,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, room.motors.length - 1);
    const drawn = drawPeak(room, faulty, random);
    const peak = { ...drawn, width: Math.min(drawn.width, room.gearTurn / 9) };
    const first = random.between(0, room.gearTurn);
    const count = Math.floor((1 - first) / room.gearTurn) + 1;
    return plan(
      'spike-turn',
      room,
      {
        kind: 'stall-spike',
        pattern: 'once-per-turn',
        severity: peak.rise,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition, _, source) => {
        const places = Array.from({ length: count }, (_, turn) => ({
          position: first + turn * room.gearTurn,
          height: Math.exp(0.2 * source.normal()),
        }));
        return { ...condition, added: [...condition.added, peaksAt(room, faulty, peak, places)] };
      },
    );
  },
};

/** A gear that meshes badly now and then, anywhere. */
export const spikeScattered: FaultKind = {
  name: 'spike-scattered',
  fits: always,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, room.motors.length - 1);
    const peak = drawPeak(room, faulty, random);
    const most = random.whole(2, 6);
    return plan(
      'spike-scattered',
      room,
      {
        kind: 'stall-spike',
        pattern: 'scattered',
        severity: peak.rise,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition, _, source) => {
        const places = Array.from({ length: source.whole(1, most) }, () => ({
          position: source.between(0.1, 0.9),
          height: Math.exp(0.3 * Math.max(-1.5, Math.min(1.5, source.normal()))),
        }));
        return { ...condition, added: [...condition.added, peaksAt(room, faulty, peak, places)] };
      },
    );
  },
};
