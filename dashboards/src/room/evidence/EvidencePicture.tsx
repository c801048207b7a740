import type { Room, Spike, Stroke, Trend, Warning } from '../../api/types.ts';
import { useLoad } from '../../api/useLoad.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import { Loaded } from '../../components/coming/states.tsx';
import { percent, quantity } from '../../format.ts';
import { sideInSentence } from '../../sideName.ts';
import { courseBegin, courseEnds, courseOf, drawnValues } from '../../small/course.ts';
import { SmallChart } from '../../small/SmallChart.tsx';
import { scaleOf, scaleOfParts } from '../../small/smallScale.ts';
import { words } from '../../words.ts';
import { EvidenceFigure, placeOfBegin } from './EvidenceFigure.tsx';
import { type Evidence, evidenceOf } from './evidencePicture.ts';
import { SupplyPicture } from './SupplyPicture.tsx';

type Of<Kind extends Evidence['kind']> = Extract<Evidence, { kind: Kind }>;

interface CourseProps {
  readonly evidence: Of<'course'>;
  readonly room: Room;
  readonly warning: Warning;
}

/** Of the measures whose course is shown; the others are currents. */
const UNITS: Readonly<Record<string, string>> = { share: '1', lagS: 's', durationS: 's' };

function CoursePicture({ evidence, room, warning }: CourseProps) {
  const { measure, side, direction, asParts } = evidence;
  const asked = new URLSearchParams({ measure, direction, side, from: courseBegin(warning.placedAt) });
  if (warning.clearedAt !== null) asked.set('to', warning.clearedAt);
  const load = useLoad<Trend>(`/rooms/${room.id}/trend?${asked}`);
  useRefresh(warning.latestStrokeId, load.reload);
  const say = words.warnings.picture;
  return (
    <Loaded load={load}>
      {(trend) => {
        const course = courseOf(trend, side, Math.max(0, room.sides.indexOf(side)), asParts);
        const shown = course.line.points.length;
        if (shown < 2) return null;
        const strokes = trend.points.slice(-shown);
        const place = placeOfBegin(strokes, warning);
        // What is heavy from the start is so by its normal, too: that is not what it is held against.
        const isHeavy = warning.kind === 'heavy-room';
        const amps = course.line.points.flatMap(([, value]) => value ?? []);
        const summary = isHeavy
          ? say.heavy(
              sideInSentence(side),
              shown,
              words.doing[direction],
              quantity(Math.min(...amps), 'A'),
              quantity(Math.max(...amps), 'A'),
            )
          : say.course(shown, words.doing[direction], course.line.beyond?.length ?? 0);
        const band = isHeavy ? null : course.band;
        const values = drawnValues([course.line], band);
        return (
          <EvidenceFigure summary={summary} strokes={strokes} place={place} banded={band !== null}>
            <SmallChart
              lines={[course.line]}
              band={band}
              uprights={course.work}
              place={place}
              scale={
                course.isParts ? scaleOfParts(values, words.normal) : scaleOf(values, UNITS[measure] ?? 'A')
              }
              ends={courseEnds(strokes)}
              label={summary}
            />
          </EvidenceFigure>
        );
      }}
    </Loaded>
  );
}

/** The medians along the travel, and each spike as high as it was: a median over its stretch of the travel hides the top. */
function withSpikes(
  profile: readonly (number | null)[],
  spikes: readonly Spike[],
): readonly (readonly [number, number | null])[] {
  const medians = profile.map((amps, i): [number, number | null] => [(i + 0.5) / profile.length, amps]);
  const tops = spikes.map(({ position, amps }): [number, number | null] => [position, amps]);
  return [...medians, ...tops].sort(([a], [b]) => a - b);
}

function TravelPicture({ evidence, room }: { readonly evidence: Of<'travel'>; readonly room: Room }) {
  const { strokeId, side, place } = evidence;
  const load = useLoad<Stroke>(`/strokes/${strokeId}`);
  const say = words.warnings.picture;
  return (
    <Loaded load={load}>
      {({ analysis }) => {
        const of = analysis?.status === 'done' ? analysis.sides[side] : undefined;
        const profile = of?.profile;
        const known = profile?.filter((amps) => amps !== null) ?? [];
        if (of === undefined || profile === undefined || known.length < 2) return null;
        const highest = quantity(Math.max(...known, ...of.spikes.map(({ amps }) => amps)), 'A');
        const summary =
          place === null
            ? say.travel(sideInSentence(side), highest)
            : say.travelAt(sideInSentence(side), highest, percent(place));
        const points = withSpikes(profile, of.spikes);
        const values = points.flatMap(([, amps]) => amps ?? []);
        return (
          <figure class="evidence">
            <SmallChart
              lines={[{ side: Math.max(0, room.sides.indexOf(side)), points }]}
              band={null}
              place={place}
              scale={scaleOf([0, ...values], 'A')}
              ends={[words.fullyIn, words.fullyOut]}
              label={summary}
            />
            <figcaption class="about">{summary}</figcaption>
          </figure>
        );
      }}
    </Loaded>
  );
}

/** What a warning saw, as a picture with its finding in words. */
export function EvidencePicture({ warning, room }: { readonly warning: Warning; readonly room: Room }) {
  const evidence = evidenceOf(warning, room.sides);
  if (evidence.kind === 'travel') return <TravelPicture evidence={evidence} room={room} />;
  if (evidence.kind === 'supply')
    return <SupplyPicture warning={warning} room={room} limitVolts={evidence.limitVolts} />;
  return <CoursePicture evidence={evidence} room={room} warning={warning} />;
}
