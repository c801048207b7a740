import type { NumberedMark } from '../charts/drawn/marks.ts';
import { Scroll } from '../components/told/Scroll.tsx';
import { placeText, quantity } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';

interface MarksProps {
  readonly marks: readonly NumberedMark[];
  readonly travelMetres: number | null;
}

/** Spikes and dips, with the numbers that they have in the pictures. */
export function MarksTable({ marks, travelMetres }: MarksProps) {
  const say = strokeWords;
  return (
    <section aria-labelledby="marks">
      <h2 id="marks">{say.marks}</h2>
      {marks.length === 0 ? (
        <p class="about">{say.noMarks}</p>
      ) : (
        <Scroll of={say.marks}>
          <table class="marks">
            <thead>
              <tr>
                <th scope="col">{say.number}</th>
                <th scope="col">{say.kind}</th>
                <th scope="col" class="number">
                  {say.place}
                </th>
                <th scope="col" class="number">
                  {say.peak}
                </th>
                <th scope="col" class="number">
                  {say.width}
                </th>
              </tr>
            </thead>
            <tbody>
              {marks.map((mark) => (
                <tr key={mark.number}>
                  <th scope="row">{mark.number}</th>
                  <td>
                    {mark.kind === 'spike' ? say.spike : say.dip}
                    <span class="remarks" dir="auto">
                      {sideName(mark.side)}
                    </span>
                  </td>
                  <td class="number">{placeText(mark.position, travelMetres)}</td>
                  <td class="number">{quantity(mark.amps, 'A')}</td>
                  <td class="number">{quantity(mark.widthS, words.units.seconds)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </section>
  );
}
