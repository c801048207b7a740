import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import type { Condition } from '../condition.ts';
import type { Plant } from '../plant.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';
import { risesOf } from './risingDraw.ts';

/** A lag worth telling, seconds. */
function leastLag({ nominal }: Plant): number {
  return Math.max(0.4, 0.015 * nominal.seconds);
}

/** How much later the edge comes with the change, seconds, as both directions agree; the stroke must be whole. */
function lagOf(plant: Plant, edge: number, change: (condition: Condition) => void): number {
  const lags = (['extend', 'retract'] as const).map((direction) => {
    const after = referenceStroke(plant, change, direction);
    const later = after.lagS - referenceStroke(plant, undefined, direction).lagS;
    const whole = Math.abs(after.endPart - (direction === 'extend' ? 1 : 0)) < 0.04;
    return whole ? (edge === 0 ? later : -later) : 0;
  });
  return Math.min(...lags);
}

/** The load that moves between the sides by a change may be this part of either before it is the share that tells. */
const SHARE_PART = 0.12;

function keepsShares(plant: Plant, change: (condition: Condition) => void): boolean {
  const rises = risesOf(referenceStroke(plant), referenceStroke(plant, change));
  return rises.every((rise) => Math.abs(rise) < SHARE_PART);
}

/** A corroded plug in one motor's cable: it turns slower. */
const slowSide: FaultKind = {
  name: 'corroded-plug',
  wants: { couplings: ['loose'], endings: ['released', 'cut-off', 'timed'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const ohm = random.between(0.3, 1.3) / plant.nominal.amps[edge];
    const corrode = (condition: Condition) => {
      condition.motors[edge].furtherOhm += ohm;
    };
    const lagS = lagOf(plant, edge, corrode);
    if (lagS < leastLag(plant) || !keepsShares(plant, corrode)) return null;
    const label = labelOf(onset, {
      kind: 'late-side',
      alsoFits: ['uneven-sides'],
      side: plant.facts.sides[edge],
      severity: lagS,
    });
    return { name: 'corroded-plug', label, startsStroke: onset, services: [], apply: corrode };
  },
};

/** A coupling with much play: the edge starts after its motor, and is late to the end. */
const slackCoupling: FaultKind = {
  name: 'slack-coupling',
  wants: { couplings: ['pulses', 'loose'], endings: ['released', 'cut-off', 'timed'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const slackMetres = random.between(0.012, 0.035);
    const loosen = (condition: Condition) => {
      condition.edges[edge].slackMetres += slackMetres;
    };
    const lagS = lagOf(plant, edge, loosen);
    if (lagS < leastLag(plant) || !keepsShares(plant, loosen)) return null;
    const label = labelOf(onset, {
      kind: 'late-side',
      alsoFits: ['dropped-load'],
      side: plant.facts.sides[edge],
      severity: lagS,
    });
    return { name: 'slack-coupling', label, startsStroke: onset, services: [], apply: loosen };
  },
};

/** Pulses of one motor get lost, so that the controller holds the other back. */
const lostPulses: FaultKind = {
  name: 'lost-pulses',
  wants: { couplings: ['pulses'], endings: ['released', 'cut-off', 'timed'] },
  draw(plant, _, onset, random) {
    const edge = random.whole(0, 1);
    const part = random.between(0.01, 0.07);
    const lose = (condition: Condition) => {
      condition.motors[edge].lostPulses = part;
    };
    const lagS = lagOf(plant, 1 - edge, lose);
    if (lagS < leastLag(plant) || !keepsShares(plant, lose)) return null;
    const label = labelOf(onset, {
      kind: 'late-side',
      // Where the guides' play is used up, the side that leads drags the other.
      alsoFits: ['uneven-sides', 'rising-draw', 'dropped-load'],
      side: plant.facts.sides[1 - edge],
      severity: lagS,
    });
    return { name: 'lost-pulses', label, startsStroke: onset, services: [], apply: lose };
  },
};

export const LATE_SIDE = [slowSide, slackCoupling, lostPulses];
