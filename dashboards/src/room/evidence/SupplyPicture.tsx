import type { Page, Room, Stroke, Warning } from '../../api/types.ts';
import { useLoad } from '../../api/useLoad.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import { Loaded } from '../../components/coming/states.tsx';
import { quantity } from '../../format.ts';
import { alongOf, courseBegin, courseEnds, MOST_STROKES } from '../../small/course.ts';
import { SmallChart } from '../../small/SmallChart.tsx';
import { scaleOf } from '../../small/smallScale.ts';
import { words } from '../../words.ts';
import { EvidenceFigure, placeOfBegin } from './EvidenceFigure.tsx';

interface SupplyProps {
  readonly warning: Warning;
  readonly room: Room;
  readonly limitVolts: number | null;
}

/** The supply while running, stroke by stroke, both ways: a battery does not know which way the room goes. */
export function SupplyPicture({ warning, room, limitVolts }: SupplyProps) {
  const asked = new URLSearchParams({
    from: courseBegin(warning.placedAt),
    limit: String(MOST_STROKES),
    profiles: 'false',
  });
  if (warning.clearedAt !== null) asked.set('to', warning.clearedAt);
  const load = useLoad<Page<Stroke>>(`/rooms/${room.id}/strokes?${asked}`);
  useRefresh(warning.latestStrokeId, load.reload);
  const say = words.warnings.picture;
  return (
    <Loaded load={load}>
      {({ items }) => {
        const strokes = items
          .flatMap(({ placedAt, analysis }) =>
            analysis?.status === 'done' && analysis.supplyVolts !== null
              ? [{ at: placedAt, volts: analysis.supplyVolts }]
              : [],
          )
          .reverse();
        if (strokes.length < 2) return null;
        const volts = strokes.map((stroke) => stroke.volts);
        const below = volts.flatMap((value, i) => (limitVolts !== null && value < limitVolts ? i : []));
        const place = placeOfBegin(strokes, warning);
        const seen = say.supply(
          strokes.length,
          quantity(Math.min(...volts), 'V'),
          quantity(Math.max(...volts), 'V'),
        );
        const summary =
          limitVolts === null ? seen : `${seen} ${say.below(below.length, quantity(limitVolts, 'V'))}`;
        return (
          <EvidenceFigure summary={summary} strokes={strokes} place={place}>
            <SmallChart
              lines={[
                {
                  side: 0,
                  dotted: true,
                  points: volts.map((value, i) => [alongOf(i, volts.length), value]),
                  beyond: below,
                },
              ]}
              band={null}
              limit={limitVolts}
              place={place}
              scale={scaleOf(limitVolts === null ? volts : [...volts, limitVolts], 'V')}
              ends={courseEnds(strokes)}
              label={summary}
            />
          </EvidenceFigure>
        );
      }}
    </Loaded>
  );
}
