import type { NormalSide, Spike } from '../api/types.ts';
import type { Overlay, ProfileLine } from '../charts/travel/profileLine.ts';
import { percent, placeText, quantity } from '../format.ts';
import { sideInSentence, sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { outsideRanges } from './normalRanges.ts';

/** More stretches than this are told as a number. */
const RANGES_TOLD = 3;

/** What the travel picture shows of one side, in sentences. A spike may be narrower than a step of the profile, and higher. */
export function sideSummary(
  { side, profile }: ProfileLine,
  normal: NormalSide | undefined,
  spikes: readonly Spike[],
): string {
  const say = strokeWords;
  const known = profile.flatMap((amps, bin) =>
    amps === null ? [] : [{ amps, position: (bin + 0.5) / profile.length }],
  );
  if (known.length === 0) return '';
  const inOrder = [...known].sort((a, b) => a.amps - b.amps);
  const peak = [...known, ...spikes].reduce((highest, one) => (one.amps > highest.amps ? one : highest));
  const middle = inOrder[Math.floor(inOrder.length / 2)];
  const course = say.travelSummary(
    sideInSentence(side),
    quantity(middle.amps, 'A'),
    quantity(peak.amps, 'A'),
    percent(peak.position),
  );
  return normal === undefined ? course : `${course} ${againstNormal(profile, normal)}`;
}

function againstNormal(profile: ProfileLine['profile'], normal: NormalSide): string {
  const say = strokeWords;
  const ranges = outsideRanges(profile, normal);
  if (ranges.length === 0) return say.withinNormal;
  const told = [...ranges].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, RANGES_TOLD);
  const inOrder = told.sort((a, b) => a.from - b.from);
  const stretches = inOrder.map(({ from, to, way }) => say.outside[way](percent(from), percent(to)));
  return say.outsideNormal(stretches.join(', '), ranges.length - told.length);
}

/** What stands under the pointer: the place, each line there, and its normal. */
export function readoutAt(
  place: number,
  lines: readonly ProfileLine[],
  normal: ReadonlyMap<string, NormalSide>,
  overlays: readonly Overlay[],
  travelMetres: number | null,
): string {
  const at = Math.min(1, Math.max(0, place));
  const valueAt = (values: readonly (number | null)[]) =>
    values[Math.min(values.length - 1, Math.floor(at * values.length))];
  const own = lines.map(({ side, profile }) => {
    const band = normal.get(side);
    const value = `${sideName(side)} ${quantity(valueAt(profile), 'A')}`;
    if (band === undefined || valueAt(band.lower) === null) return value;
    const span = words.zoom.span(quantity(valueAt(band.lower), 'A'), quantity(valueAt(band.upper), 'A'));
    return `${value} (${strokeWords.normal} ${span})`;
  });
  const laid = overlays.map(
    ({ letter, lines: theirs }) =>
      `${letter} ${theirs.map(({ profile }) => quantity(valueAt(profile), 'A')).join(' / ')}`,
  );
  return `${placeText(at, travelMetres)}: ${[...own, ...laid].join(words.joint)}`;
}
