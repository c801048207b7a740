import { useCallback, useId, useState } from 'preact/hooks';
import type { MeasureTitle, Room } from '../../api/types.ts';
import { Field } from '../../components/sending/Field.tsx';
import { referenceText } from '../../format.ts';
import { replaceAddress, usePath, useSearch } from '../../router.ts';
import { words } from '../../words.ts';
import { SideTrend } from './SideTrend.tsx';
import { type TrendQuestion, trendQuestionOf, trendSearch } from './trendQuestion.ts';

/** A measure of the whole stroke, the same whichever side is asked for. */
const OF_WHOLE_STROKE = 'lagS';

interface ChoiceProps<Value extends string> {
  readonly label: string;
  /** What the option that is taken means, where its name alone does not tell. */
  readonly hint?: string;
  readonly options: readonly (readonly [Value, string])[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}

/** A few options side by side, one of them taken. */
function Choice<Value extends string>({ label, hint, options, value, onChange }: ChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="choice" aria-describedby={hint === undefined ? undefined : `${name}-hint`}>
      <legend>{label}</legend>
      {options.map(([option, text]) => (
        <label key={option}>
          <input
            type="radio"
            name={name}
            value={option}
            checked={option === value}
            onChange={() => onChange(option)}
          />
          <span>{text}</span>
        </label>
      ))}
      {hint !== undefined && (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
    </fieldset>
  );
}

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
  const [extents, setExtents] = useState<Readonly<Record<string, readonly [number, number]>>>({});
  const measure = measures.find((m) => m.name === name) ?? measures[0];
  const sides = measure.name === OF_WHOLE_STROKE ? [null] : room.sides;
  const shown = `${measure.name}/${direction}/${scale}`;
  const report = useCallback((key: string, extent: readonly [number, number]) => {
    setExtents((held) =>
      held[key]?.[0] === extent[0] && held[key]?.[1] === extent[1] ? held : { ...held, [key]: extent },
    );
  }, []);
  const reported = sides.flatMap((side) => extents[`${shown}/${side}`] ?? []);
  const extent: readonly [number, number] | null =
    reported.length === 0 ? null : [Math.min(...reported), Math.max(...reported)];
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
            extent={extent}
            report={report}
            reportAs={`${shown}/${side}`}
          />
        ))}
      </div>
    </section>
  );
}
