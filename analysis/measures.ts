import { turnsAs } from './motor/turns.ts';
import { profileShape } from './profileShape.ts';
import type { Direction } from './trace.ts';

/**
 * The measures of a stroke: one registry, from which the trend, the table of measures and the baselines follow.
 * The order is stored in the database (arrays by index): append only, never reorder.
 */
export interface MeasureDefinition {
  readonly name: string;
  readonly unit: string;
  readonly title: string;
  /** `side`: one value a side; `stroke`: one value a stroke, the same whichever side is asked for. */
  readonly of: 'side' | 'stroke';
  /** `ratio`: changes are proportions of the level (currents, durations); `difference`: changes are amounts. */
  readonly scale: 'ratio' | 'difference';
}

/** All measures, in the order in which they are stored. */
export const MEASURES = [
  { name: 'runningAmps', unit: 'A', title: 'Running current (median)', of: 'side', scale: 'ratio' },
  {
    name: 'runningAmpsP90',
    unit: 'A',
    title: 'Running current (90th percentile)',
    of: 'side',
    scale: 'ratio',
  },
  { name: 'inrushAmps', unit: 'A', title: 'Inrush peak', of: 'side', scale: 'ratio' },
  { name: 'endStopAmps', unit: 'A', title: 'Current at the end stop', of: 'side', scale: 'ratio' },
  { name: 'durationS', unit: 's', title: 'Duration', of: 'side', scale: 'ratio' },
  { name: 'chargeAs', unit: 'A·s', title: 'Charge', of: 'side', scale: 'ratio' },
  { name: 'energyJ', unit: 'J', title: 'Energy', of: 'side', scale: 'ratio' },
  { name: 'share', unit: '1', title: 'Share of the load', of: 'side', scale: 'difference' },
  { name: 'lagS', unit: 's', title: 'Lag between the sides', of: 'stroke', scale: 'difference' },
  { name: 'roughness', unit: 'A', title: 'Roughness of the running current', of: 'side', scale: 'ratio' },
  { name: 'spreadAmps', unit: 'A', title: 'Spread along the travel', of: 'side', scale: 'ratio' },
  { name: 'slope', unit: '1', title: 'Rise along the travel', of: 'side', scale: 'difference' },
  { name: 'bulge', unit: '1', title: 'Bulge in mid-travel', of: 'side', scale: 'difference' },
  { name: 'rippleAmps', unit: 'A', title: 'Strongest swing along the travel', of: 'side', scale: 'ratio' },
  { name: 'turnsAs', unit: 'A·s', title: 'Turns of the motor', of: 'side', scale: 'ratio' },
] as const satisfies readonly MeasureDefinition[];

/** The name of a measure. */
export type MeasureName = (typeof MEASURES)[number]['name'];

/** Their names, in the same order. */
export const MEASURE_NAMES: readonly MeasureName[] = MEASURES.map((m) => m.name);

/** Where each measure stands in MEASURES, and in whatever is kept by index of them. */
export const MEASURE_INDEX = Object.fromEntries(
  MEASURE_NAMES.map((name, index) => [name, index]),
  // fromEntries forgets the keys that it was given.
) as Readonly<Record<MeasureName, number>>;

/** Whether a measure compares the sides: it is as much the others' as this one's, and off either way is as bad. */
export function isBetweenSides(measure: MeasureName): boolean {
  return measure === 'share' || measure === 'lagS';
}

const BY_TIME: ReadonlySet<MeasureName> = new Set(['durationS', 'turnsAs', 'chargeAs', 'energyJ']);

/** Whether work on another side alone changes a measure: what compares the sides, and what goes by the time that all of them take. */
export function goesByOtherSides(measure: MeasureName): boolean {
  return isBetweenSides(measure) || BY_TIME.has(measure);
}

/** A short peak (or dip) of the running current: `amps` at its peak, `position` 0 to 1, `widthS` at half its height. */
export interface Spike {
  readonly position: number;
  readonly amps: number;
  readonly widthS: number;
}

/** When the phases of one side begin and end, seconds from the stroke's `startedAt`. */
export interface SidePhases {
  readonly startS: number;
  readonly inrushEndS: number;
  readonly endStopStartS: number | null;
  readonly endS: number;
  /** Pauses within the stroke: the motor stood still and started again. */
  readonly pauses: readonly { readonly fromS: number; readonly toS: number }[];
}

/** The highest reading of a record where several samples are that one value: its sensor may come to its end there. */
export interface HeldReading {
  /** Amperes as they were recorded, the offset in them; positive while driving. */
  readonly amps: number;
  /** The sensor's noise in steps of its readings: where it spans several, no current reads as one value for long. */
  readonly noiseSteps: number;
}

/** What one side's current says of one stroke. Amperes are less the sensor's offset. */
export interface SideMeasures {
  readonly inrushAmps: number;
  readonly runningAmps: number;
  readonly runningAmpsP90: number;
  readonly endStopAmps: number | null;
  /** From its start to its end stop, or its end, less the pauses. */
  readonly durationS: number;
  /** Over the whole span, the stall included. */
  readonly chargeAs: number;
  readonly energyJ: number | null;
  /** Spread of the running current about its own slow course, amperes. */
  readonly roughness: number;
  readonly spikes: readonly Spike[];
  readonly dips: readonly Spike[];
  /** Median amps in each of 64 equal bins of travel, from fully retracted to fully extended; null: no sample. */
  readonly profile: readonly (number | null)[];
  /** The sensor's reading at rest, which was taken off; null where the record has no rest in it. */
  readonly offsetAmps: number | null;
  /** Standard deviation of the sensor's own noise, amperes. */
  readonly noiseAmps: number;
  readonly phases: SidePhases;
  /** Samples a second of this side's record; absent in analyses from before it was kept. */
  readonly rateHz?: number;
  /** Whether the current was recorded as positive or as negative while it drove; absent in older analyses. */
  readonly sign?: 1 | -1;
  /** Supply while it stood at its end stop, volts; missing where it was not read there, and in older analyses. */
  readonly endStopVolts?: number;
  /** Missing where the highest reading is none that several samples share; and in older analyses. */
  readonly held?: HeldReading;
}

/** What makes a record hard to trust, though it was measured. */
export type Doubt = 'clipped' | 'offset' | 'scale' | 'gaps' | 'noise' | 'clock' | 'flat' | 'reversed';

/** What was measured of a stroke that could be used. */
export interface DoneAnalysis {
  readonly status: 'done';
  readonly direction: Direction;
  /** `speed`: position by integrating the motor's estimated speed; `time`: by time over the moving part. */
  readonly positionBy: 'speed' | 'time';
  readonly sides: Readonly<Record<string, SideMeasures>>;
  /** Each side's share of the running current; null unless every side of the room was recorded. */
  readonly share: Readonly<Record<string, number>> | null;
  /**
   * How much later than the first listed side the last one came to its end, seconds; null with one side, and where one of the
   * two was not recorded.
   */
  readonly lagS: number | null;
  /** Mean supply while running, volts; null when it was not recorded. */
  readonly supplyVolts: number | null;
  readonly doubts: readonly { readonly side: string; readonly doubt: Doubt; readonly detail: string }[];
}

/** A stroke of which nothing could be measured. */
export interface UnusableAnalysis {
  readonly status: 'unusable';
  /** A sentence for people. */
  readonly reason: string;
  readonly doubts?: DoneAnalysis['doubts'];
  /** As it was sent or as the sign of the current tells it; null or missing: it is not known. */
  readonly direction?: Direction | null;
}

/** Whether some side came to its stop. */
export function comesToStop({ sides }: Pick<DoneAnalysis, 'sides'>): boolean {
  return Object.values(sides).some(({ endStopAmps }) => endStopAmps !== null);
}

/** The whole of what one stroke's samples say, whatever the room's history. */
export type StrokeAnalysis = DoneAnalysis | UnusableAnalysis;

/** Number of travel bins of a profile. */
export const PROFILE_BINS = 64;

/** The value of a measure for a side, or null where this stroke has none. */
export function measureValue(analysis: DoneAnalysis, measure: MeasureName, side: string): number | null {
  if (measure === 'lagS') return analysis.lagS;
  if (measure === 'share') return analysis.share?.[side] ?? null;
  const measured = analysis.sides[side];
  if (measured === undefined) return null;
  switch (measure) {
    case 'spreadAmps':
    case 'slope':
    case 'bulge':
    case 'rippleAmps':
      return profileShape(measured.profile)?.[measure] ?? null;
    case 'turnsAs':
      return turnsAs(measured);
    default:
      return measured[measure];
  }
}
