import type { PreviewedColumn, Room } from '../api/types.ts';
import { Scroll } from '../components/told/Scroll.tsx';
import { sideName } from '../sideName.ts';
import { uploadWords } from '../words/upload.ts';
import { codeOf } from './corrections.ts';

interface ColumnsProps {
  readonly room: Room;
  readonly columns: readonly PreviewedColumn[];
  /** What a person chose so far, also where the service has not answered to it yet; null: nothing. */
  readonly chosen: readonly string[] | null;
  readonly onChange: (codes: readonly string[]) => void;
}

/** A measured value, with a point or a comma; a cell may be empty where a sample was missed. */
const isNumber = (cell: string): boolean => /^[-+]?[\d.,]*(e[-+]?\d+)?$/i.test(cell);

function optionsOf(room: Room): (readonly [string, string])[] {
  const say = uploadWords;
  const sides = room.sides.flatMap((side) => [
    [`side/${side}/A`, say.sideIn(sideName(side), say.amperes)] as const,
    [`side/${side}/mA`, say.sideIn(sideName(side), say.milliamperes)] as const,
  ]);
  return [...sides, ...Object.entries(say.roles)];
}

/** What each column is taken for, to be corrected. */
export function ColumnsTable({ room, columns, chosen, onChange }: ColumnsProps) {
  const say = uploadWords;
  const options = optionsOf(room);
  const codes = chosen ?? columns.map(codeOf);
  const isKnown = (code: string) => options.some(([known]) => known === code);
  return (
    <section aria-labelledby="columns">
      <h2 id="columns">{say.columns}</h2>
      <Scroll of={say.columns}>
        <table class="columns">
          <thead>
            <tr>
              <th scope="col">{say.column}</th>
              <th scope="col">{say.titleInFile}</th>
              <th scope="col">{say.taken}</th>
              <th scope="col">{say.first}</th>
            </tr>
          </thead>
          <tbody>
            {columns.map(({ column, title, examples }, i) => (
              <tr key={column}>
                <th scope="row">{column}</th>
                <td dir="auto">{title === null || title === '' ? say.unnamed : title}</td>
                <td>
                  <select
                    aria-label={say.takenFor(column)}
                    aria-describedby={isKnown(codes[i]) ? undefined : `column-${column}`}
                    value={isKnown(codes[i]) ? codes[i] : ''}
                    onChange={(event) => {
                      const picked = event.currentTarget.value;
                      onChange(codes.map((code, n) => (n === i ? picked : code)));
                    }}
                  >
                    {!isKnown(codes[i]) && <option value="">{say.pick}</option>}
                    {options.map(([code, text]) => (
                      <option key={code} value={code}>
                        {text}
                      </option>
                    ))}
                  </select>
                  {!isKnown(codes[i]) && (
                    <p class="hint" id={`column-${column}`}>
                      {examples.every(isNumber) ? say.whichSide : say.whatIsIt}
                    </p>
                  )}
                </td>
                <td dir="auto">{examples.join('  ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
