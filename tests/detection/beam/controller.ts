import type { Condition } from './condition.ts';
import type { Control, Plant } from './plant.ts';

/** Seconds after a start in which no limit trips. */
const BLANKING_S = 0.8;
/** A difference that pulse counting leaves alone, pulses, and how fast it slows the leading side, a pulse. */
const LEAVES_PULSES = 2;
const SLOWS_A_PULSE = 0.03;
const LEAST_DUTY = 0.55;
/** Part of the nominal speed below which a motor stands, to the ear. */
const STANDS_BELOW = 0.08;
/** How long limited current holds a stalled room, in trip times. */
const HOLDS = 6;
/** How much later a standing room is seen than a stalled motor is heard, seconds. */
const SEES_AFTER_S = 0.8;
/** Who holds the switch and what the electronics do with it: each motor's duty, step by step. */
export class Controller {
  /** Part of the supply given to each motor; 0: off. */
  readonly duty: number[];
  finished = false;

  private readonly control: Control;
  private readonly tripped: boolean[];
  private readonly overS: number[];
  private readonly standsS: number[];
  private readonly counts: number[];
  private readonly lastPulse: number[];
  private readonly lostPulses: number[];
  private readonly owed: number[];
  private readonly wayMetres: number;
  private readonly longestS: number;
  private sinceStartS = 0;
  private pauses: { atPart: number; seconds: number }[];
  private pausedS = 0;
  private stalledS = 0;
  private seenMetres = 0;
  private seenStandingS = 0;
  private offS = 0;
  private jogs: boolean;
  private jogging = 0;

  private readonly plant: Plant;
  private readonly condition: Condition;

  constructor(plant: Plant, condition: Condition, startMetres: number) {
    this.plant = plant;
    this.condition = condition;
    const motors = plant.motors.length;
    this.control = plant.control;
    this.duty = new Array(motors).fill(1);
    this.tripped = new Array(motors).fill(false);
    this.overS = new Array(motors).fill(0);
    this.standsS = new Array(motors).fill(0);
    this.counts = new Array(motors).fill(0);
    this.lastPulse = new Array(motors).fill(0);
    this.owed = new Array(motors).fill(0);
    this.lostPulses = condition.motors.map(({ lostPulses }) => lostPulses);
    const out = condition.direction === 'extend';
    this.wayMetres = out ? plant.travelMetres - startMetres : startMetres;
    this.longestS = condition.timerS ?? plant.control.longestS;
    this.pauses = [...condition.user.pauses];
    this.jogs = condition.user.jogS > 0;
  }

  /**
   * Sets the duties from what the controller can know: each motor's current and turns (as metres gone, along the
   * stroke), and, for the user and the limit switch, the part of the travel gone.
   */
  act(
    stepS: number,
    amps: ArrayLike<number>,
    gone: ArrayLike<number>,
    speeds: ArrayLike<number>,
    goneMetres: number,
    elapsedS: number,
  ): void {
    if (this.finished) {
      this.afterEnd(stepS);
      return;
    }
    if (this.pausedS > 0) {
      this.pausedS -= stepS;
      if (this.pausedS <= 0) this.start();
      return;
    }
    this.sinceStartS += stepS;
    this.watchCurrents(stepS, amps, speeds);
    this.countPulses(gone);
    const part = goneMetres / Math.max(0.001, this.wayMetres);
    const base = this.control.rampS > 0 ? Math.min(1, 0.25 + this.sinceStartS / this.control.rampS) : 1;
    for (let motor = 0; motor < this.duty.length; motor++) {
      this.duty[motor] = this.tripped[motor] ? 0 : base;
    }
    if (this.control.coupling === 'pulses' && part < 0.97) this.keepStep();
    if (this.pauses.length > 0 && part > this.pauses[0].atPart) {
      this.pausedS = this.pauses[0].seconds;
      this.pauses.shift();
      this.duty.fill(0);
      return;
    }
    const { stopsAtPart } = this.condition.user;
    if (stopsAtPart !== null && part > stopsAtPart) this.finish(false);
    else if (this.control.ending === 'switch' && this.wayMetres - goneMetres < 0.004) this.finish(true);
    else if (elapsedS > this.longestS) this.finish(true);
    else if (this.tripped.every(Boolean)) this.finish(true);
    else this.listen(stepS, goneMetres);
  }

  private watchCurrents(stepS: number, amps: ArrayLike<number>, speeds: ArrayLike<number>): void {
    const { ending, limitAmps, tripS } = this.control;
    for (let motor = 0; motor < this.duty.length; motor++) {
      const stands = Math.abs(speeds[motor]) < STANDS_BELOW * this.plant.nominal.speed;
      this.standsS[motor] = stands && this.sinceStartS > BLANKING_S ? this.standsS[motor] + stepS : 0;
      if (ending === 'timed') continue;
      const over = this.sinceStartS > BLANKING_S && amps[motor] > limitAmps[motor];
      this.overS[motor] = over ? this.overS[motor] + stepS : 0;
      // A switch on the frame is backed by the same limit.
      if (ending !== 'released' && this.overS[motor] > tripS) this.tripped[motor] = true;
    }
  }

  /** The most that the electronics let a motor draw, amperes: their own loop is faster than anything else here. */
  ceilingAmps(motor: number): number {
    const limits = this.control.ending === 'timed' && this.sinceStartS > BLANKING_S;
    return limits ? this.control.limitAmps[motor] : Number.POSITIVE_INFINITY;
  }

  private countPulses(gone: ArrayLike<number>): void {
    const { pulseMetres } = this.control;
    for (let motor = 0; motor < this.counts.length; motor++) {
      const pulse = Math.floor(gone[motor] / pulseMetres);
      const fresh = pulse - this.lastPulse[motor];
      this.lastPulse[motor] = pulse;
      this.owed[motor] += fresh * (1 - this.lostPulses[motor]);
      this.counts[motor] = Math.floor(this.owed[motor]);
    }
  }

  private keepStep(): void {
    if (this.tripped.some(Boolean)) return;
    const ahead = this.counts[0] - this.counts[1];
    const leader = ahead > 0 ? 0 : 1;
    const excess = Math.abs(ahead) - LEAVES_PULSES;
    if (excess > 0) this.duty[leader] *= Math.max(LEAST_DUTY, 1 - SLOWS_A_PULSE * excess);
  }

  /** The user lets go once the motors stand, or a little later once the room does while a motor still turns. */
  private listen(stepS: number, goneMetres: number): void {
    const standing = this.standsS.every((seconds, motor) => this.tripped[motor] || seconds > 0);
    this.stalledS = standing ? this.stalledS + stepS : 0;
    if (goneMetres > this.seenMetres + 0.0005 || this.sinceStartS < BLANKING_S) {
      this.seenMetres = goneMetres;
      this.seenStandingS = 0;
    } else this.seenStandingS += stepS;
    // Limited current may hold the room against its stop a little longer than a thumb would.
    const held = this.control.ending === 'timed' ? this.control.tripS * HOLDS : 0;
    const releaseS = this.condition.user.releaseS + held;
    if (this.stalledS > releaseS || this.seenStandingS > releaseS + SEES_AFTER_S) this.finish(true);
  }

  private start(): void {
    this.sinceStartS = 0;
    this.duty.fill(1);
    this.overS.fill(0);
  }

  private finish(jogAllowed: boolean): void {
    this.finished = true;
    this.jogs &&= jogAllowed;
    this.duty.fill(0);
    this.offS = 0;
  }

  /** Off, or the short second press of a user who wants to be sure. */
  private afterEnd(stepS: number): void {
    this.offS += stepS;
    if (this.jogs && this.offS > this.condition.user.jogAfterS) {
      this.jogs = false;
      this.jogging = this.condition.user.jogS;
      this.duty.fill(1);
    }
    if (this.jogging > 0) {
      this.jogging -= stepS;
      if (this.jogging <= 0) {
        this.duty.fill(0);
        this.offS = 0;
      }
    }
  }

  /** Seconds since everything was off for good; negative while something may still come. */
  restS(): number {
    return this.finished && !this.jogs && this.jogging <= 0 ? this.offS : -1;
  }
}
