import type { ServiceKind } from '../../../analysis/trace.ts';
import type { Random } from '../../../server/demo/simulator/random.ts';

export const DAY_MS = 86_400_000;

/** An ordinary service in a healthy life, and what it lastingly does to the friction. */
export interface PlainService {
  readonly beforeStroke: number;
  readonly kind: ServiceKind;
  readonly frictionAfter: number;
}

/** What happens to a room in good order as well as to one that is not. */
export interface Variants {
  /** Part of the current that the first strokes draw more, and over how many strokes it goes. */
  readonly runInPart: number;
  readonly runInStrokes: number;
  readonly seasonPart: number;
  readonly seasonPhase: number;
  /** Some days of frost in one of the winters, by days of the calendar from and to. */
  readonly coldSnap: { readonly fromDay: number; readonly toDay: number; readonly ambientC: number } | null;
  /** Strokes from-to on a battery that is low but allowed, or on a charger that is generous. */
  readonly lowBattery: { readonly from: number; readonly to: number; readonly volts: number } | null;
  readonly strongCharger: { readonly from: number; readonly to: number; readonly volts: number } | null;
  /** Before these strokes the clamps were taken off and zeroed again. */
  readonly rezeroedBefore: readonly number[];
  readonly pauseChance: number;
  readonly isAbandonedNowAndThen: boolean;
  readonly laterRateFrom: number;
  readonly storageBeforeStroke: number | null;
  readonly storageDays: number;
  /** Part that the first strokes after the storage draw more. */
  readonly storageStiffness: number;
  readonly service: PlainService | null;
}

export function drawVariants(strokes: number, random: Random): Variants {
  const someStroke = (least = 16) => random.integer(least, Math.max(least, strokes - 6));
  const span = (chance: number, most: number) => {
    const from = someStroke();
    const to = from + random.integer(2, most);
    return random.chance(chance) ? { from, to } : null;
  };
  const low = span(0.4, 10);
  const strong = span(0.4, 20);
  const rezeroedBefore = [someStroke(), someStroke()];
  return {
    runInPart: random.chance(0.4) ? random.uniform(0.02, 0.08) : 0,
    runInStrokes: random.uniform(3, 9),
    seasonPart: random.uniform(0, 0.025),
    seasonPhase: random.uniform(0, 2 * Math.PI),
    coldSnap: drawColdSnap(random),
    lowBattery: low && { ...low, volts: random.uniform(11.9, 12.25) },
    strongCharger: strong && { ...strong, volts: random.uniform(14, 14.5) },
    rezeroedBefore: random.chance(0.5) ? rezeroedBefore : [],
    pauseChance: random.chance(0.6) ? random.uniform(0.005, 0.03) : 0,
    isAbandonedNowAndThen: random.chance(0.5),
    laterRateFrom: someStroke(24),
    storageBeforeStroke: random.chance(0.5) ? someStroke(20) : null,
    storageDays: random.uniform(110, 190),
    storageStiffness: random.uniform(0.04, 0.12),
    service: drawService(someStroke(24), random),
  };
}

/** In the middle of one of the winters that two hundred strokes span. */
function drawColdSnap(random: Random): Variants['coldSnap'] {
  const midwinter = Date.UTC(random.integer(2022, 2025), 0, 20) / DAY_MS;
  const fromDay = midwinter + random.uniform(-40, 25);
  const snap = { fromDay, toDay: fromDay + random.uniform(5, 18), ambientC: random.uniform(-14, -2) };
  return random.chance(0.8) ? snap : null;
}

function drawService(beforeStroke: number, random: Random): PlainService | null {
  if (!random.chance(0.5)) return null;
  const kind = random.pick<ServiceKind>(['lubricated', 'lubricated', 'cleaned']);
  const most = kind === 'lubricated' ? 0.19 : 0.08;
  return { beforeStroke, kind, frictionAfter: 1 - random.uniform(0, most) };
}
