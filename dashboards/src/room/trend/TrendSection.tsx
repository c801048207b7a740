import type { MeasureTitle, Room } from '../../api/types.ts';
import { Choice } from '../../components/sending/Choice.tsx';
import { Field } from '../../components/sending/Field.tsx';
import { referenceText } from '../../format.ts';
import { replaceAddress, usePath, useSearch } from '../../router.ts';
import { words } from '../../words.ts';
import { SideTrend } from './SideTrend.tsx';
import { type TrendQuestion, trendQuestionOf, trendSearch } from './trendQuestion.ts';
import { useSharedFrame } from './useSharedFrame.ts';

/** A measure of the whole stroke, the same whichever side is asked for. */
const OF_WHOLE_STROKE = 'lagS';

interface SectionProps {
  readonly room: Room;
  readonly measures: readonly MeasureTitle[];
  readonly version: string;
}

/**
 * A measure's course, side by side for the sides of the room, on one scale. What is chosen stands in the address: whoever
 * looks at a stroke and comes back finds it as it was.
 */
export function TrendSection({ room, measures, version }: SectionProps) {
  const path = usePath();
  const question = trendQuestionOf(useSearch());
  const { measure: name, direction, scale } = question;
  const ask = (part: Partial<TrendQuestion>) => replaceAddress(path + trendSearch({ ...question, ...part }));
  const measure = measures.find((m) => m.name === name) ?? measures[0];
  const sides = measure.name === OF_WHOLE_STROKE ? [null] : room.sides;
  const shown = `${measure.name}/${direction}/${scale}`;
  const { frame, report } = useSharedFrame(sides.map((side) => `${shown}/${side}`));
  return (
    <section aria-labelledby="trend">
      <h2 id="trend">{words.trend.title}</h2>
      <div class="controls">
        <Field label={words.trend.measure}>
          {(ids) => (
            <select
              {...ids}
              value={measure.name}
              onChange={(event) => ask({ measure: event.currentTarget.value })}
            >
              {measures.map((m) => (
                <option key={m.name} value={m.name}>
                  {m.title}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Choice
          label={words.trend.direction}
          options={[
            ['extend', words.directions.extend],
            ['retract', words.directions.retract],
          ]}
          value={direction}
          onChange={(chosen) => ask({ direction: chosen })}
        />
        <Choice
          label={words.trend.scale}
          hint={scale === 'adjusted' ? words.trend.adjustedMeans : undefined}
          options={[
            ['adjusted', words.trend.adjusted(referenceText(room))],
            ['measured', words.trend.asMeasured],
          ]}
          value={scale}
          onChange={(chosen) => ask({ scale: chosen })}
        />
      </div>
      <p class="on-paper">
        {[
          measure.title,
          words.directions[direction],
          scale === 'adjusted' ? words.trend.adjusted(referenceText(room)) : words.trend.asMeasured,
        ].join(words.joint)}
      </p>
      <div class="pair trends">
        {sides.map((side) => (
          <SideTrend
            key={`${shown}/${side}`}
            room={room}
            measure={measure}
            direction={direction}
            side={side}
            scale={scale}
            version={version}
            frame={frame}
            report={report}
            reportAs={`${shown}/${side}`}
          />
        ))}
      </div>
    </section>
  );
}
