import { labelOf, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import type { Random } from '../random.ts';
import { type Reference, referenceStroke } from '../referenceStroke.ts';
import type { Fault, FaultKind } from '../story.ts';
import { solveSize } from './solve.ts';

/** A peak must stand this far above the noise, standard deviations, and this far above the running current, parts. */
const ABOVE_NOISE = 9;
/** Samples within a peak's half width that the logger must have. */
const LEAST_SAMPLES = 1.5;
/** The other motor may show this part of the peak. */
const OTHER_PART = 0.5;

function wantedPeak(plant: Plant, motor: number, random: Random): number {
  const amps = plant.nominal.amps[motor] * random.between(0.35, 1);
  return Math.max(amps, ABOVE_NOISE * plant.logger.noiseAmps);
}

function isSampled(plant: Plant, metres: number): boolean {
  // A change of the sampling rate may halve it.
  const rateHz = plant.logger.rateHz > 60 ? plant.logger.rateHz / 2 : plant.logger.rateHz;
  return (metres / 2 / plant.nominal.speed) * rateHz >= LEAST_SAMPLES;
}

/** The force at which the faulty motor peaks as wanted, whole strokes and the other motor's quiet provided. */
function forceFor(
  plant: Plant,
  motor: number,
  peak: number,
  change: (newtons: number) => (condition: Condition) => void,
): number | null {
  const before = referenceStroke(plant);
  const peaks = (after: Reference, at: number) => after.peaks[at] - before.peaks[at];
  const guess = peak * plant.motors[motor].emf * plant.motors[motor].efficiency;
  const newtons = solveSize((each) => peaks(referenceStroke(plant, change(each)), motor), peak, guess, 0, 6);
  if (newtons === null) return null;
  for (const direction of ['extend', 'retract'] as const) {
    const after = referenceStroke(plant, change(newtons), direction);
    if (Math.abs(after.endPart - (direction === 'extend' ? 1 : 0)) > 0.03) return null;
    if (plant.motors.length === 2 && peaks(after, 1 - motor) > OTHER_PART * peak) return null;
  }
  return newtons;
}

/** A fastener stands proud at one place of one rail. */
const proudFastener: FaultKind = {
  name: 'proud-fastener',
  wants: {},
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const motor = Math.min(edge, plant.motors.length - 1);
    const widthMetres = random.between(0.008, 0.02);
    if (!isSampled(plant, widthMetres)) return null;
    const position = random.between(0.15, 0.85);
    const bump = (newtons: number) => (condition: Condition) => {
      condition.edges[edge].bumps.push({ centreMetres: position * plant.travelMetres, widthMetres, newtons });
    };
    const peak = wantedPeak(plant, motor, random);
    const newtons = forceFor(plant, motor, peak, bump);
    if (newtons === null) return null;
    const label = labelOf(onset, {
      kind: 'stall-spike',
      side: plant.facts.sides[motor],
      position,
      pattern: 'same-place',
      severity: peak / plant.nominal.amps[motor],
    });
    const apply = (condition: Condition, own: Random) => bump(newtons * own.between(0.85, 1.15))(condition);
    return { name: 'proud-fastener', label, startsStroke: onset, services: [], apply };
  },
};

/** One tooth of a gear is broken: a jerk with each of its turns, and slack while it passes. */
const brokenTooth: FaultKind = {
  name: 'broken-tooth',
  wants: { gear: true, leastRateHz: 25 },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const motor = Math.min(edge, plant.motors.length - 1);
    const rideMetres = plant.toothMetres * random.between(0.6, 1);
    if (!isSampled(plant, rideMetres)) return null;
    const gear = turnOf(plant);
    if (gear === null) return null;
    const phaseMetres = random.between(0, gear);
    const gapMetres = plant.toothMetres * random.between(0.03, 0.1);
    const broken = (newtons: number) => (condition: Condition) => {
      condition.edges[edge].tooth = { turnMetres: gear, phaseMetres, gapMetres, rideMetres, newtons };
    };
    const peak = wantedPeak(plant, motor, random);
    const newtons = forceFor(plant, motor, peak, broken);
    if (newtons === null) return null;
    const label = labelOf(onset, {
      kind: 'stall-spike',
      side: plant.facts.sides[motor],
      pattern: 'once-per-turn',
      severity: peak / plant.nominal.amps[motor],
    });
    const apply = (condition: Condition, own: Random) => broken(newtons * own.between(0.85, 1.15))(condition);
    return { name: 'broken-tooth', label, startsStroke: onset, services: [], apply };
  },
};

function turnOf({ gearMetres, travelMetres }: Plant): number | null {
  return travelMetres / gearMetres > 4.5 ? gearMetres : null;
}

/** A gear that lies too far from its rack climbs out now and then, anywhere, and drops in again. */
const climbingGear: FaultKind = {
  name: 'climbing-gear',
  wants: { leastRateHz: 20 },
  draw(plant, _, onset, random): Fault | null {
    const edge = random.whole(0, 1);
    const motor = Math.min(edge, plant.motors.length - 1);
    const climbMetres = plant.toothMetres * random.between(0.7, 1.2);
    if (!isSampled(plant, climbMetres)) return null;
    const freeMetres = plant.toothMetres * random.between(0.1, 0.3);
    const often = random.whole(2, 5);
    const climb = (newtons: number, places: readonly number[]) => (condition: Condition) => {
      condition.edges[edge].slips = places.map((place) => ({
        atMetres: place * plant.travelMetres,
        climbMetres,
        newtons,
        freeMetres,
        inClutch: false,
      }));
    };
    const peak = wantedPeak(plant, motor, random);
    const newtons = forceFor(plant, motor, peak, (each) => climb(each, [0.4, 0.65]));
    if (newtons === null) return null;
    const label = labelOf(onset, {
      kind: 'stall-spike',
      side: plant.motors.length === 1 ? namedSide(plant, null) : plant.facts.sides[motor],
      pattern: 'scattered',
      severity: peak / plant.nominal.amps[motor],
    });
    return {
      name: 'climbing-gear',
      label,
      startsStroke: onset,
      services: [],
      apply(condition, own) {
        const places = Array.from({ length: own.whole(Math.max(1, often - 1), often + 1) }, () =>
          own.between(0.12, 0.88),
        );
        climb(newtons * own.between(0.8, 1.25), places)(condition);
      },
    };
  },
};

export const STALL_SPIKE = [proudFastener, brokenTooth, climbingGear];
