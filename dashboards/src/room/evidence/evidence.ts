import { percent, plainNumber, quantity } from '../../format.ts';
import { words } from '../../words.ts';

/** Names of quantities end in their unit (`runningAmps`, `lagS`): the ending tells how to write the value. */
const ENDINGS: readonly (readonly [string, (value: number) => string])[] = [
  ['Points', (value) => words.evidence.ofLoad(percent(value / 100))],
  ['Amps', (value) => quantity(value, 'A')],
  ['Volts', (value) => quantity(value, 'V')],
  ['Percent', (value) => percent(value / 100)],
  ['percentPerStroke', (value) => percent(value / 100)],
  ['percentPerStrokeBefore', (value) => percent(value / 100)],
  ['partOfStall', percent],
  ['Share', percent],
  ['shareNow', percent],
  ['Ratio', percent],
  ['Position', percent],
  ['from', percent],
  ['to', percent],
  ['Metres', (value) => quantity(value, 'm')],
  ['S', (value) => quantity(value, words.units.seconds)],
  ['C', (value) => quantity(value, '°C')],
  ['J', (value) => quantity(value, 'J')],
];

/** `lowestRunningAmps` reads "Lowest running". */
function spaced(name: string): string {
  const apart = name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .trim();
  return apart.charAt(0).toUpperCase() + apart.slice(1);
}

function valueText(value: unknown): string | null {
  if (typeof value === 'number') return Number.isInteger(value) ? String(value) : plainNumber(value);
  if (typeof value === 'boolean') return value ? words.evidence.yes : words.evidence.no;
  return typeof value === 'string' && value !== '' ? value : null;
}

/** Told by the warning itself, in its own words and its own rounding: the last three by how sure it is. */
const TOLD_ELSEWHERE: readonly string[] = [
  'position',
  'pattern',
  'side',
  'way',
  'meanVolts',
  'doubt',
  'detail',
  'sigmas',
  'strokesWithSpikes',
  'strokesLookedAt',
];

function labelOf(name: string, ending: string): string {
  const known: Readonly<Record<string, string>> = words.evidence.names;
  return (
    known[name] ?? spaced(name.length > ending.length ? name.slice(0, -ending.length || undefined) : name)
  );
}

/** A warning's evidence as label and value; nested values are for machines and are left out. */
export function evidenceLines(evidence: Readonly<Record<string, unknown>>): [string, string][] {
  const names = Object.keys(words.evidence.names);
  const placeOf = (name: string) => (names.includes(name) ? names.indexOf(name) : names.length);
  const told = Object.entries(evidence).sort(([a], [b]) => placeOf(a) - placeOf(b));
  return told.flatMap(([name, value]): [string, string][] => {
    if (TOLD_ELSEWHERE.includes(name)) return [];
    const ending = ENDINGS.find(([end]) => name.endsWith(end));
    const text = typeof value === 'number' && ending !== undefined ? ending[1](value) : valueText(value);
    return text === null ? [] : [[labelOf(name, typeof value === 'number' ? (ending?.[0] ?? '') : ''), text]];
  });
}
