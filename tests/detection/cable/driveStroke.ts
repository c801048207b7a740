import type { Direction } from '../../../analysis/trace.ts';
import { beginBreaker } from './breaker.ts';
import type { Condition } from './condition.ts';
import { beginControl } from './control.ts';
import { pushBackOf } from './pushBack.ts';
import type { CableRoom, Side } from './room.ts';
import { STEP_S } from './step.ts';

/** A stroke as it truly was, from the switch being pressed until nothing is fed any more. */
export interface Tape {
  readonly amps: readonly Float64Array[];
  readonly volts: Float64Array;
  readonly positions: readonly Float64Array[];
  readonly steps: number;
  /** Above the air, at the end. */
  readonly warmC: readonly number[];
}

const COPPER_PER_KELVIN = 0.00393;
/** Ferrite magnets lose about a five-hundredth a kelvin, and warm less than the copper does. From memory. */
const FERRITE_PER_KELVIN = 0.002;
const MAGNET_WARMING = 0.3;
const SLOW_SAG_S = 10;
/** Worm and planetary gears hold back most of what the room pushes. Common practice, no source. */
const BACK_DRIVEN = 0.25;
const COOLING_S = 240;

interface Moving {
  readonly side: Side;
  readonly feelsAt: ReturnType<typeof pushBackOf>;
  readonly breaker: ReturnType<typeof beginBreaker>;
  readonly springDamping: number;
  motorMetres: number;
  motorSpeed: number;
  /** Progress of the room's side, metres from the end where the stroke would begin if it were whole. */
  metres: number;
  speed: number;
  /** What has slipped between motor and room, and the slack. */
  slipMetres: number;
  warmC: number;
  amps: number;
  hasHold: boolean;
  /** What the joint and the box do at this step, the same for both ends of each. */
  jointNewtons: number;
  boxNewtons: number;
  /** Where it slips next, and for how long yet. */
  readonly slips: { at: number; leftS: number }[];
}

/** Drives a room through one stroke: motors, springs and masses stepped together, friction as an impulse. */
export function driveStroke(room: CableRoom, direction: Direction, condition: Condition): Tape {
  const { travelMetres, controller, supply } = room;
  const startMetres = (direction === 'extend' ? condition.from : 1 - condition.from) * travelMetres;
  const blocked = condition.blockedAt;
  const stopMetres =
    blocked === null ? travelMetres : (direction === 'extend' ? blocked : 1 - blocked) * travelMetres;
  const sides = room.sides.map(
    (side, at): Moving => ({
      side,
      feelsAt: pushBackOf(room, condition, direction, at),
      breaker: beginBreaker(controller.breaker),
      springDamping: 0.4 * Math.sqrt(side.springNewtonsPerMetre * side.roomKg),
      motorMetres: startMetres,
      motorSpeed: 0,
      metres: startMetres,
      speed: 0,
      slipMetres: condition.reversed ? side.slackMetres : 0,
      warmC: condition.warmC[at],
      amps: 0,
      hasHold: true,
      jointNewtons: 0,
      boxNewtons: 0,
      slips: condition.slips.map(({ at: place, seconds }) => ({ at: place, leftS: seconds })),
    }),
  );
  const control = beginControl(room, direction, condition);
  const most = Math.ceil((2.6 * (travelMetres / room.speed) + 25) / STEP_S);
  const amps = sides.map(() => new Float64Array(most));
  const positions = sides.map(() => new Float64Array(most));
  const volts = new Float64Array(most);
  let slowSag = 0;
  let step = 0;
  for (; step < most; step++) {
    const duties = control.dutiesAt(step * STEP_S, sides);
    if (duties === null) break;
    let pull = 0;
    let induced = 0;
    const batteryOhm = supply.batteryOhm * condition.batteryOhm + supply.leadOhm + condition.contactOhm;
    const electric = sides.map(({ side, warmC, motorSpeed, breaker }, at) => {
      const own = condition.sides[at];
      const copperK = condition.ambientC + warmC - 20;
      const ohm = side.ohmAt20C * own.ohm * (1 + COPPER_PER_KELVIN * copperK);
      const field =
        own.magnets * (1 - FERRITE_PER_KELVIN * (condition.ambientC - 20 + MAGNET_WARMING * warmC));
      const duty = breaker.isOpen() ? 0 : duties[at];
      const back = side.voltsPerMetreSecond * field;
      pull += (duty * duty) / ohm;
      induced += (duty * back * motorSpeed) / ohm;
      return { ohm, field, duty, back };
    });
    const fed = (condition.openVolts - slowSag + batteryOhm * induced) / (1 + batteryOhm * pull);
    let drawn = 0;
    for (const [at, moving] of sides.entries()) {
      moving.jointNewtons = jointNewtons(moving);
      moving.boxNewtons = boxNewtons(room, moving, sides[1 - at]);
    }
    for (const [at, moving] of sides.entries()) {
      const { ohm, field, duty, back } = electric[at];
      turnMotor(moving, {
        ohm,
        field,
        back,
        volts: duty * fed,
        limitAmps: controller.limitAmps,
        isFed: duty > 0,
      });
      drawn += duty * moving.amps;
      moving.warmC +=
        STEP_S * ((moving.amps ** 2 * ohm) / moving.side.armatureJoulesPerKelvin - moving.warmC / COOLING_S);
      moving.breaker.warm(moving.amps, STEP_S);
      amps[at][step] = moving.amps;
    }
    slowSag += (STEP_S / SLOW_SAG_S) * (supply.slowOhm * condition.batteryOhm * drawn - slowSag);
    volts[step] = condition.openVolts - slowSag - drawn * (batteryOhm - supply.leadOhm);
    for (const [at, moving] of sides.entries()) {
      moveRoom(moving, room, {
        stopMetres,
        startMetres,
        direction,
        lost: condition.sides[at].lost,
      });
      positions[at][step] =
        direction === 'extend' ? moving.metres / travelMetres : 1 - moving.metres / travelMetres;
    }
  }
  return { amps, volts, positions, steps: step, warmC: sides.map(({ warmC }) => warmC) };
}

interface Fed {
  readonly ohm: number;
  readonly field: number;
  readonly back: number;
  readonly volts: number;
  readonly limitAmps: number | null;
  readonly isFed: boolean;
}

function turnMotor(moving: Moving, { ohm, field, back, volts, limitAmps, isFed }: Fed): void {
  const { side } = moving;
  const joint = moving.jointNewtons;
  const load = joint < 0 ? joint * BACK_DRIVEN : joint;
  const pushPerAmp = side.newtonsPerAmp * field;
  const perKg = STEP_S / side.armatureKg;
  let speed: number;
  if (!isFed) speed = moving.motorSpeed - perKg * load;
  else {
    const stiff = (perKg * pushPerAmp * back) / ohm;
    speed = (moving.motorSpeed + perKg * ((pushPerAmp * volts) / ohm - load)) / (1 + stiff);
    const amps = (volts - back * speed) / ohm;
    if (limitAmps !== null && amps > limitAmps)
      speed = moving.motorSpeed + perKg * (pushPerAmp * limitAmps - load);
  }
  moving.motorSpeed = rub(speed, perKg * side.newtonsPerAmp * side.idleAmps);
  moving.motorMetres += STEP_S * moving.motorSpeed;
  const amps = isFed ? (volts - back * moving.motorSpeed) / ohm : 0;
  moving.amps = Math.max(0, limitAmps === null ? amps : Math.min(amps, limitAmps));
}

/** Cable, shaft or teeth: nothing within the slack, a spring beyond it. */
function jointNewtons({
  side,
  motorMetres,
  metres,
  slipMetres,
  motorSpeed,
  speed,
  springDamping,
}: Moving): number {
  const stretch = motorMetres - metres - slipMetres;
  if (stretch > 0) return side.springNewtonsPerMetre * stretch + springDamping * (motorSpeed - speed);
  // Beyond the slack the way back, the room drags at the motor.
  const behind = stretch + side.slackMetres;
  return behind < 0 ? side.springNewtonsPerMetre * behind + springDamping * (motorSpeed - speed) : 0;
}

/** A box that stands askew pulls its sides together. */
function boxNewtons({ boxNewtonsPerMetre }: CableRoom, moving: Moving, other: Moving | undefined): number {
  if (other === undefined) return 0;
  const damping = 0.1 * Math.sqrt(boxNewtonsPerMetre * moving.side.roomKg);
  return boxNewtonsPerMetre * (other.metres - moving.metres) + damping * (other.speed - moving.speed);
}

interface Place {
  readonly stopMetres: number;
  readonly startMetres: number;
  readonly direction: Direction;
  readonly lost: readonly { readonly from: number; readonly to: number }[];
}

function moveRoom(moving: Moving, room: CableRoom, place: Place): void {
  const { side } = moving;
  const positionMetres = place.direction === 'extend' ? moving.metres : room.travelMetres - moving.metres;
  const part = positionMetres / room.travelMetres;
  moving.hasHold =
    !place.lost.some(({ from, to }) => part >= from && part <= to) && !isSlipping(moving, part, place);
  if (!moving.hasHold) moving.slipMetres = moving.motorMetres - moving.metres;
  const back = moving.feelsAt(positionMetres, Math.abs(moving.metres - place.startMetres));
  let newtons = moving.boxNewtons + (moving.hasHold ? moving.jointNewtons : 0);
  newtons -= back.pushing + back.drag * moving.speed;
  const beyond = moving.metres - place.stopMetres;
  if (beyond > 0) {
    const damping = 0.5 * Math.sqrt(room.stopNewtonsPerMetre * side.roomKg);
    newtons -= Math.max(0, room.stopNewtonsPerMetre * beyond + damping * moving.speed);
  }
  const perKg = STEP_S / side.roomKg;
  moving.speed = rub(moving.speed + perKg * newtons, perKg * back.rubbing);
  moving.metres += STEP_S * moving.speed;
}

/** A slip takes its time wherever the room stands meanwhile. */
function isSlipping(moving: Moving, part: number, { direction }: Place): boolean {
  const slip = moving.slips[0];
  if (slip === undefined || (direction === 'extend' ? part < slip.at : part > slip.at)) return false;
  slip.leftS -= STEP_S;
  if (slip.leftS <= 0) moving.slips.shift();
  return true;
}

/** Friction can stop a thing and not turn it back. */
function rub(speed: number, taken: number): number {
  return speed > 0 ? Math.max(0, speed - taken) : Math.min(0, speed + taken);
}
