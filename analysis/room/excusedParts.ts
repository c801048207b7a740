import type { FindingContext } from '../findings/finding.ts';
import { isPart } from '../findings/isPart.ts';
import { WHOLE } from '../findings/shortTravel/movementParts.ts';
import { openFor } from '../findings/shortTravel/shortTravelSaid.ts';
import type { Expectation } from '../history.ts';
import { comesToStop, type MeasureName } from '../measures.ts';

/** The measures that are summed up over a whole way, or that go along it. */
const OF_THE_WAY: ReadonlySet<MeasureName> = new Set([
  'durationS',
  'chargeAs',
  'energyJ',
  'turnsAs',
  'roughness',
  'spreadAmps',
  'slope',
  'bulge',
  'rippleAmps',
]);

/**
 * Whether a stroke went a part of the way for a reason that is no trouble: somebody let go of it, or the one before it left the
 * room on its way. What came to its stop too soon, from the other end, met something. Before the stroke is taken into what is
 * remembered of the travel.
 */
export function isPartOfMovement(context: FindingContext): boolean {
  const { state, analysis } = context;
  const cameFromItsWay = state.travel.direction !== null && state.travel.part < WHOLE.least;
  if (cameFromItsWay) return wayMade(context) < WHOLE.least;
  return !comesToStop(analysis) && isPart(context);
}

/** The part of its expected time that the side took which was driven furthest; 1 where none is known. */
function wayMade({ state, residual }: FindingContext): number {
  const times = state.room.sides.flatMap((side) => residual(side, 'durationS')?.rise ?? []);
  return times.length === 0 ? 1 : Math.exp(Math.max(...times));
}

/**
 * The limits are those of whole strokes: a part of a movement is not beyond them for what goes by the way, unless it is said
 * that strokes end early.
 */
export function excuseParts(context: FindingContext, expectations: Expectation[]): Expectation[] {
  if (openFor(context) !== undefined) return expectations;
  return expectations.map((each) =>
    each.beyond === true && OF_THE_WAY.has(each.measure) ? { ...each, beyond: false } : each,
  );
}
