import type { Condition } from './condition.ts';
import type { Plant } from './plant.ts';

/** The battery, what charges it, and the way to the controller. Volts and amperes. */
export class Supply {
  private readonly restVolts: number;
  private readonly chargerVolts: number | null;
  private readonly chargerAmps: number;
  private readonly internalOhm: number;
  private readonly feedOhm: number;

  constructor(plant: Plant, { source, ambientC }: Condition) {
    const cold = Math.max(0, 20 - ambientC);
    this.restVolts = source.restVolts;
    this.chargerVolts = source.chargerVolts;
    this.chargerAmps = plant.source.chargerAmps;
    this.internalOhm = plant.source.internalOhm * source.internalFactor * (1 + 0.012 * cold);
    this.feedOhm = plant.source.feedOhm + source.furtherFeedOhm;
  }

  /** At the battery's poles, with `amps` drawn. */
  battery(amps: number): number {
    if (this.chargerVolts === null) return this.restVolts - this.internalOhm * amps;
    const charged = this.chargerVolts - 0.006 * amps;
    const helped = this.restVolts - this.internalOhm * (amps - this.chargerAmps);
    return Math.min(charged, Math.max(helped, this.restVolts - this.internalOhm * amps));
  }

  /** At the controller, below the poles by what the feed takes. */
  controller(batteryVolts: number, amps: number): number {
    return batteryVolts - this.feedOhm * amps;
  }
}
