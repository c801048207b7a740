import type { Plant } from './plant.ts';

/** A narrow place that resists: half a sine over its width. */
export interface Bump {
  /** 0 fully in to 1 fully out. */
  readonly position: number;
  readonly widthMetres: number;
  readonly newtons: number;
}

/** What one side is like in one stroke. Faults and nuisances write into it. */
export interface SideCondition {
  /** On all that slides and rolls. */
  frictionFactor: number;
  /** Added sliding force, newtons. */
  dragNewtons: number;
  bumps: Bump[];
  /** Part of the travel over which its gear carries nothing. */
  loose: { from: number; to: number } | null;
  /** On the motor's constant. */
  magnetFactor: number;
  windingFactor: number;
  contactOhms: number;
  startDelayS: number;
  /** Moments in which its brushes lose contact: seconds from the start, and how long. */
  sparks: { atS: number; lastS: number }[];
  /** What its sensor does to the true current. */
  gain: number;
  offsetAmps: number;
  noiseAmps: number;
  clipAmps: number;
  gapPart: number;
  isOff: boolean;
}

/** What a whole stroke is like. */
export interface StrokeCondition {
  sides: SideCondition[];
  ambientC: number;
  /** Against extending, newtons over the whole room. */
  tiltNewtons: number;
  topperFactor: number;
  sealFactor: number;
  wiperFactor: number;
  viscousFactor: number;
  /** Parts of the usual force that hold the room until it has moved some millimetres. */
  stuck: number;
  openVolts: number;
  supplyOhms: number;
  /** Other users of the battery: from, to (seconds), amperes. */
  others: { fromS: number; toS: number; amps: number }[];
  /** At which the supply changes over, and to what. */
  changeover: { atS: number; openVolts: number } | null;
  pauses: { position: number; lastS: number }[];
  /** Where the user lets go for this time. */
  stopAt: number | null;
  /** Another push of the switch at the end. */
  jog: { waitS: number; lastS: number } | null;
  /** Something in the way. */
  block: number | null;
  /** Whether the controller backs off from what blocked it. */
  reverses: boolean;
  /** Where the controller thinks the end is. */
  limitAt: number | null;
  rateHz: number;
  resolutionAmps: number;
  lateS: number;
  clockFactor: number;
}

/** A stroke with nothing special about it. */
export function plainCondition(plant: Plant): StrokeCondition {
  const { supply, logger } = plant;
  return {
    sides: plant.sides.map((_, i) => ({
      frictionFactor: 1,
      dragNewtons: 0,
      bumps: [],
      loose: null,
      magnetFactor: 1,
      windingFactor: 1,
      contactOhms: 0,
      startDelayS: 0,
      sparks: [],
      gain: logger.gain[i],
      offsetAmps: logger.offsetAmps[i],
      noiseAmps: logger.noiseAmps,
      clipAmps: Number.POSITIVE_INFINITY,
      gapPart: logger.missedPart,
      isOff: false,
    })),
    ambientC: 20,
    tiltNewtons: 0,
    topperFactor: 1,
    sealFactor: 1,
    wiperFactor: 1,
    viscousFactor: 1,
    stuck: 0,
    openVolts: supply.batteryVolts,
    supplyOhms: supply.feedOhms + supply.batteryOhms,
    others: [],
    changeover: null,
    pauses: [],
    stopAt: null,
    jog: null,
    block: null,
    reverses: false,
    limitAt: null,
    rateHz: logger.rateHz,
    resolutionAmps: logger.resolutionAmps,
    lateS: 0,
    clockFactor: logger.clockFactor,
  };
}
