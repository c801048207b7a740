import type { Direction, StrokesPreview } from '../api/types.ts';
import { Scroll } from '../components/told/Scroll.tsx';
import { plainCount, quantity, whenText } from '../format.ts';
import { uploadWords } from '../words/upload.ts';
import { words } from '../words.ts';

interface StrokesProps {
  readonly strokes: StrokesPreview['strokes'];
  readonly directions: readonly (Direction | null)[];
  readonly onChange: (index: number, direction: Direction) => void;
}

const DIRECTIONS = ['extend', 'retract'] as const satisfies readonly Direction[];

/** How the recording is cut, and which way each stroke ran. */
export function StrokesTable({ strokes, directions, onChange }: StrokesProps) {
  const say = uploadWords;
  return (
    <section aria-labelledby="cut">
      <h2 id="cut">{say.strokes}</h2>
      <Scroll of={say.strokes}>
        <table class="cut">
          <thead>
            <tr>
              <th scope="col">{say.number}</th>
              <th scope="col">{say.begins}</th>
              <th scope="col" class="number">
                {say.lasts}
              </th>
              <th scope="col" class="number">
                {say.samples}
              </th>
              <th scope="col">{say.direction}</th>
            </tr>
          </thead>
          <tbody>
            {strokes.map((stroke, i) => (
              <tr key={stroke.fromS}>
                <th scope="row">{i + 1}</th>
                <td>
                  {quantity(stroke.fromS, words.units.seconds)}
                  {stroke.startedAt !== null && `, ${whenText(stroke.startedAt)}`}
                </td>
                <td class="number">{quantity(stroke.toS - stroke.fromS, words.units.seconds)}</td>
                <td class="number">{plainCount(stroke.samples)}</td>
                <td>
                  <select
                    aria-label={say.directionOf(i + 1)}
                    aria-invalid={directions[i] === null}
                    value={directions[i] ?? ''}
                    onChange={(event) => {
                      const chosen = DIRECTIONS.find((one) => one === event.currentTarget.value);
                      if (chosen !== undefined) onChange(i, chosen);
                    }}
                  >
                    {directions[i] === null && <option value="">{say.notTold}</option>}
                    {DIRECTIONS.map((direction) => (
                      <option key={direction} value={direction}>
                        {words.directionChoices[direction]}
                      </option>
                    ))}
                  </select>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
