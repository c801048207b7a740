import type { StrokeCondition } from './condition.ts';
import { courseAt, drawWander } from './course.ts';
import type { Random } from './random.ts';
import { type RecorderRoom, referenceVolts } from './room.ts';

/** What truly flowed, in equal steps of time from the start of the drive on. */
export interface Motion {
  readonly stepS: number;
  readonly amps: readonly Float64Array[];
  readonly volts: Float64Array;
}

const COPPER_PER_C = 0.00393;
const LONGEST = 3.2;
const FINEST_S = 0.0125;
/** Back voltage after a stop or a cut falls with this, seconds. */
const BRAKE_S = 0.035;
/** Of the controller's own averages, seconds. */
const CONTROL_S = 0.06;

/** One side while it moves. */
interface Side {
  position: number;
  backVolts: number;
  duty: number;
  /** Seconds since the last start. */
  running: number;
  stalled: number;
  on: boolean;
  /** Fed in this step. */
  driven: boolean;
  /** In the step before. */
  amps: number;
  turned: number;
}

/**
 * Runs one stroke: each motor's current follows its voltage and its speed, its speed follows what current remains above
 * the load, `back voltage' = (current - load) * ohms / run-up time`; ripple and teeth are written upon it.
 */
export function runStroke(room: RecorderRoom, condition: StrokeCondition, random: Random): Motion {
  const { direction, motors } = condition;
  const { controller } = room;
  const count = motors.length;
  const stepS = 1 / (condition.recording.rateHz * Math.ceil(1 / (condition.recording.rateHz * FINEST_S)));
  const sign = direction === 'extend' ? 1 : -1;
  const most = Math.ceil((LONGEST * room.durationS + 12) / stepS);
  const amps = motors.map(() => new Float64Array(most));
  const volts = new Float64Array(most);
  const wander = motors.map(() => drawWander(room.scatter.wander, random));
  const shared = drawWander(0.7 * room.scatter.wander, random);
  const courses = room.courses[direction];
  const ohms = motors.map((motor) => motor.ohms * (1 + COPPER_PER_C * (condition.windingC - 20)));
  const nominal = motors.map((motor) => referenceVolts(room) - motor.runningAmps * motor.ohms);
  const phases = motors.map(() => ({
    ripple: random.between(0, 6),
    rotor: random.between(0, 6),
  }));
  const sides: Side[] = motors.map(() => ({
    position: condition.from,
    backVolts: 0,
    duty: 0,
    running: 0,
    stalled: 0,
    on: true,
    driven: false,
    amps: 0,
    turned: 0,
  }));
  const remainingOf = (side: Side) => sign * (condition.to - side.position);
  const leadOf = (index: number) =>
    count > 1 ? sign * (sides[index].position - sides[1 - index].position) : 0;
  let pauseLeft = 0;
  let pauseDue = condition.pause !== null;
  let allDone = 0;
  let jogLeft = condition.jogAfterS > 0 ? 0.35 : 0;
  let step = 0;
  let pulses = controller.start === 'pulse' ? 0.9 : 0;

  for (; step < most; step++) {
    if (pauseDue && condition.pause !== null && sign * (sides[0].position - condition.pause.position) > 0) {
      pauseDue = false;
      pauseLeft = condition.pause.seconds;
      for (const side of sides) side.running = 0;
    }
    const paused = pauseLeft > 0;
    if (paused) pauseLeft -= stepS;
    // Nudges of 0.15 s each 0.3 s before the drive proper.
    const nudged = pulses > 0 && pulses % 0.3 < 0.15;
    if (pulses > 0) pulses -= stepS;
    for (let index = 0; index < count; index++) {
      const side = sides[index];
      side.driven = side.on && !paused && !nudged;
      if (side.driven) side.running += stepS;
      const wanted = wantedDuty(room, condition, side, remainingOf(side), leadOf(index));
      side.duty = side.driven ? side.duty + (wanted - side.duty) * Math.min(1, stepS / 0.02) : 0;
    }
    const terminal = terminalVolts(condition, ohms, controller.limitAmps, sides);
    volts[step] = terminal;
    for (let index = 0; index < count; index++) {
      const side = sides[index];
      const motor = motors[index];
      const { driven } = side;
      const remaining = remainingOf(side);
      const loose = condition.isLoose(index, side.position);
      const loadPart =
        courseAt(courses[index], side.position) +
        courseAt(wander[index], side.position) +
        courseAt(shared, side.position) +
        room.toothSwing * Math.sin((2 * Math.PI * side.position) / room.tooth + 2 * index) +
        room.turnSwing * Math.sin((2 * Math.PI * side.position) / room.gearTurn + index) +
        motor.breakaway * Math.exp(-side.running / motor.settleS) +
        (loose ? 0 : room.stiffness * leadOf(index));
      let part = Math.max(0, loadPart * condition.level[index]);
      for (const added of condition.added) part += added(index, side.position, side.running);
      const load = motor.noLoadAmps + Math.max(0, part) * (motor.runningAmps - motor.noLoadAmps);
      const atStop = remaining <= 0 && !loose;
      let current = driven ? Math.max(0, (side.duty * terminal - side.backVolts) / ohms[index]) : 0;
      current = Math.min(current, controller.limitAmps[index]);
      side.amps = current;
      if (atStop || !driven) side.backVolts *= Math.exp(-stepS / BRAKE_S);
      else {
        const balance = side.duty * terminal - load * ohms[index];
        if (current < controller.limitAmps[index] && current > 0)
          side.backVolts = balance + (side.backVolts - balance) * Math.exp(-stepS / motor.runUpS);
        else side.backVolts += ((current - load) * ohms[index] * stepS) / motor.runUpS;
        side.backVolts = Math.max(0, side.backVolts);
      }
      const speed = (motor.quickness * side.backVolts) / nominal[index] / room.durationS;
      side.turned += speed * stepS;
      if (!loose) {
        if (!atStop && driven) side.position += sign * speed * stepS * condition.grip[index];
      } else if (count > 1) side.position = sides[1 - index].position;
      else side.position += sign * speed * stepS;
      const ripple =
        motor.ripple * Math.sin(2 * Math.PI * motor.rippleCycles * side.turned + phases[index].ripple) +
        motor.rotorSwing * Math.sin(2 * Math.PI * motor.rotorTurns * side.turned + phases[index].rotor);
      amps[index][step] = current * (1 + (atStop ? 0 : ripple));
      if (side.on) side.on = staysOn(room, condition, side, remaining, stepS);
    }
    stopTogether(room, condition, sides);
    if (sides.every((side) => !side.on)) {
      allDone += stepS;
      if (jogLeft > 0 && allDone > condition.jogAfterS) {
        jogLeft = 0;
        for (const side of sides) Object.assign(side, { on: true, running: 0, stalled: 0 });
        allDone = 0;
      } else if (jogLeft <= 0 && allDone > 0.25) break;
    }
  }
  const length = Math.min(step + 1, most);
  return { stepS, amps: amps.map((list) => list.subarray(0, length)), volts: volts.subarray(0, length) };
}

/** The voltage at the motors, solved together with the currents that draw it down; a motor held at its limit draws that. */
function terminalVolts(
  { openVolts, lineOhms }: StrokeCondition,
  ohms: readonly number[],
  limitAmps: readonly number[],
  sides: readonly Side[],
): number {
  let pull = 0;
  let siemens = 0;
  sides.forEach((side, index) => {
    if (!side.driven) return;
    if (side.amps >= limitAmps[index]) pull -= side.amps;
    else if (side.duty * openVolts > side.backVolts) {
      pull += side.backVolts / ohms[index];
      siemens += side.duty / ohms[index];
    }
  });
  return Math.min(openVolts, (openVolts + lineOhms * pull) / (1 + lineOhms * siemens));
}

function wantedDuty(
  { controller }: RecorderRoom,
  condition: StrokeCondition,
  side: Side,
  remaining: number,
  lead: number,
): number {
  let duty = controller.start === 'ramp' ? Math.min(1, 0.25 + (0.75 * side.running) / controller.rampS) : 1;
  if (remaining < controller.slowZone && condition.ends === 'usual')
    duty = Math.min(duty, controller.slowDuty);
  if (condition.inStep && controller.stepGain > 0 && lead > 0 && remaining > 0)
    duty *= Math.max(0.55, 1 - controller.stepGain * lead);
  return Math.round(duty * 200) / 200;
}

function staysOn(
  { controller }: RecorderRoom,
  { ends, holdS }: StrokeCondition,
  side: Side,
  remaining: number,
  stepS: number,
): boolean {
  if (remaining > 0) return true;
  if (ends === 'let-go') return false;
  if (ends === 'usual' && controller.end === 'switch') return false;
  side.stalled += stepS;
  if (ends === 'usual' && controller.end === 'controller') return side.stalled < CONTROL_S + 0.25 * holdS;
  return true;
}

/** Whoever holds the switch lets go of all motors at once. */
function stopTogether(
  { controller, durationS }: RecorderRoom,
  condition: StrokeCondition,
  sides: Side[],
): void {
  const bound = sides.filter((side, index) => !condition.isLoose(index, side.position));
  const byHand = condition.ends === 'stall' || (condition.ends === 'usual' && controller.end === 'user');
  const over = byHand
    ? bound.length > 0 && bound.every((side) => side.stalled >= condition.holdS)
    : bound.length > 0 && bound.every((side) => !side.on);
  const givenUp = bound.length === 0 && sides[0].running >= durationS + 2 * condition.holdS;
  if (over || givenUp) for (const side of sides) side.on = false;
}
