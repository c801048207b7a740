import type { StrokeCondition } from './condition.ts';
import type { Plant } from './plant.ts';

/** Part of its usual speed below which a side stands. */
const STANDING_PART = 0.04;
/** In which a motor must have started. */
const START_S = 0.6;

/** What the switch sees of the room at one moment. */
export interface Sight {
  readonly seconds: number;
  /** By side: how far out, and how fast outwards. */
  readonly metres: ArrayLike<number>;
  readonly speeds: ArrayLike<number>;
  readonly amps: ArrayLike<number>;
}

/** User and controller of one stroke: which part of the supply each motor gets, in its direction; null: open. */
export interface Switching {
  readonly duties: (number | null)[];
  isOver: boolean;
  look(sight: Sight): void;
}

/** `towards`: +1 extending, -1 retracting; `longest`: seconds after which the user gives up. */
export function beginSwitching(
  plant: Plant,
  stroke: StrokeCondition,
  towards: 1 | -1,
  longest: number,
): Switching {
  const { controller, travelMetres, strokeS, sides } = plant;
  const count = sides.length;
  const usualSpeed = travelMetres / strokeS;
  const standingS = sides.map(() => 0);
  const isOff = sides.map(() => false);
  const limits = sides.map(() => 1);
  const pauses = [...stroke.pauses];
  let pausedUntil = -1;
  let since = 0;
  let last = 0;
  let phase: 'running' | 'waiting' | 'jogging' | 'backing' = 'running';
  let phaseEnds = 0;

  const along = (metres: number) => (towards === 1 ? metres : travelMetres - metres) / travelMetres;
  const passed = (position: number, metres: number) =>
    along(metres) >= (towards === 1 ? position : 1 - position);

  const isPassed = (position: number | null, metres: number) => position !== null && passed(position, metres);

  const switching: Switching = { duties: sides.map(() => 0), isOver: false, look };

  function open(): void {
    switching.duties.fill(null);
  }

  function look({ seconds, metres, speeds, amps }: Sight): void {
    const step = seconds - last;
    last = seconds;
    if (seconds > longest) switching.isOver = true;
    if (phase !== 'running') otherPhase(seconds);
    else if (seconds < pausedUntil) open();
    else run(seconds, step, metres, speeds, amps);
  }

  function run(
    seconds: number,
    step: number,
    metres: ArrayLike<number>,
    speeds: ArrayLike<number>,
    amps: ArrayLike<number>,
  ): void {
    const middle = count === 1 ? metres[0] : (metres[0] + metres[1]) / 2;
    if (pauses.length > 0 && passed(pauses[0].position, middle)) {
      pausedUntil = seconds + pauses[0].lastS;
      since = pausedUntil;
      standingS.fill(0);
      pauses.shift();
      open();
      return;
    }
    if (isPassed(stroke.stopAt, middle) || isPassed(stroke.limitAt, middle)) {
      finish();
      return;
    }
    for (let i = 0; i < count; i++) {
      const stands =
        speeds[i] * towards < STANDING_PART * usualSpeed &&
        seconds - since > START_S + stroke.sides[i].startDelayS;
      standingS[i] = stands ? standingS[i] + step : 0;
      if (controller.kind !== 'relays' && standingS[i] > controller.stallS) isOff[i] = true;
    }
    const stands = standingS.every((each, i) => isOff[i] || each > controller.stallS || isLost(i));
    if (stands && !standingS.every((_, i) => isLost(i))) {
      atEnd(seconds, middle);
      return;
    }
    for (let i = 0; i < count; i++) {
      if (isOff[i] || seconds - since < stroke.sides[i].startDelayS) {
        switching.duties[i] = null;
        continue;
      }
      const ramp =
        controller.rampS > 0 ? Math.min(1, 0.35 + (0.65 * (seconds - since)) / controller.rampS) : 1;
      switching.duties[i] = ramp * limited(i, amps[i]) * heldBack(i, metres);
    }
  }

  /** A side whose gear is loose at the end of the way never stands; the user looks at the other one. */
  function isLost(i: number): boolean {
    const { loose } = stroke.sides[i];
    return loose !== null && (towards === 1 ? loose.to >= 1 : loose.from <= 0);
  }

  function limited(i: number, amps: number): number {
    if (controller.limitAmps === null) return 1;
    const excess = Math.abs(amps) / controller.limitAmps - 1;
    limits[i] = Math.max(0.3, Math.min(1, limits[i] - 0.08 * excess));
    return limits[i];
  }

  function heldBack(i: number, metres: ArrayLike<number>): number {
    if (controller.stepGain === 0 || count < 2) return 1;
    const counted = (each: number) => Math.round(each / controller.countMetres) * controller.countMetres;
    const lead = towards * (counted(metres[i]) - counted(metres[1 - i]));
    return Math.max(0.55, 1 - controller.stepGain * Math.max(0, lead - controller.countMetres));
  }

  function atEnd(seconds: number, middle: number): void {
    open();
    const early = along(middle) < 0.97;
    if (early && stroke.reverses) [phase, phaseEnds] = ['backing', seconds + 1.1];
    else if (!early && stroke.jog !== null) [phase, phaseEnds] = ['waiting', seconds + stroke.jog.waitS];
    else switching.isOver = true;
  }

  function otherPhase(seconds: number): void {
    if (phase === 'waiting') {
      open();
      if (seconds > phaseEnds) [phase, phaseEnds] = ['jogging', seconds + (stroke.jog?.lastS ?? 0)];
    } else if (phase === 'jogging') {
      switching.duties.fill(1);
      if (seconds > phaseEnds) finish();
    } else {
      switching.duties.fill(seconds > phaseEnds - 0.8 ? -1 : null);
      if (seconds > phaseEnds) finish();
    }
  }

  function finish(): void {
    open();
    switching.isOver = true;
  }

  return switching;
}
