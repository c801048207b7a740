import { useId } from 'preact/hooks';
import type { ComparedGroup, MeasureTitle, Room } from '../api/types.ts';
import { Scroll } from '../components/told/Scroll.tsx';
import { percent, quantity, referenceText } from '../format.ts';
import { sideInSentence } from '../sideName.ts';
import type { Scale } from '../small/roundScale.ts';
import { compareWords } from '../words/compare.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { isCompared } from './isCompared.ts';
import { Profile } from './Profile.tsx';
import { ShiftTable } from './ShiftTable.tsx';

/** What tells most of a repair, in this order; the rest is folded away, so that one sheet of paper holds it. */
const FIRST_MEASURES = ['runningAmps', 'durationS', 'share', 'roughness'];

/** As many places as can be read in a sentence; the picture marks all. */
const MOST_PLACES = 3;

/** The places that changed, in words: those that changed most, in the order of the travel. */
function changedText({ changedBins }: ComparedGroup): string {
  const say = compareWords;
  if (changedBins.length === 0) return say.noPlaces;
  const told = [...changedBins]
    .sort((a, b) => Math.abs(b.shiftAmps) - Math.abs(a.shiftAmps))
    .slice(0, MOST_PLACES)
    .sort((a, b) => a.from - b.from);
  const places = told.map(({ from, to, shiftAmps }) => {
    const change = `${quantity(Math.abs(shiftAmps), 'A')} ${shiftAmps < 0 ? say.less : say.more}`;
    return from === 0 && to === 1 ? say.everywhere(change) : say.place(percent(from), percent(to), change);
  });
  return say.places(places.join('; '), changedBins.length - told.length);
}

/** The two profiles as numbers. */
function ProfileTable({ group }: { readonly group: ComparedGroup }) {
  const say = compareWords;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{strokeWords.place}</th>
          <th scope="col" class="number">
            {say.before}
          </th>
          <th scope="col" class="number">
            {say.after}
          </th>
        </tr>
      </thead>
      <tbody>
        {group.profileBefore.map((amps, bin) => (
          // A bin is its index.
          <tr key={bin}>
            <th scope="row">{percent((bin + 0.5) / group.profileBefore.length)}</th>
            <td class="number">{quantity(amps, 'A')}</td>
            <td class="number">{quantity(group.profileAfter[bin], 'A')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface GroupProps {
  readonly room: Room;
  readonly group: ComparedGroup;
  readonly titles: readonly MeasureTitle[];
  readonly scale: Scale;
}

/** One side in one direction: how many strokes, both profiles, and the shift of each measure. */
export function Group({ room, group, titles, scale }: GroupProps) {
  const id = useId();
  const say = compareWords;
  const title = say.group(sideInSentence(group.side), words.doing[group.direction]);
  const known = group.shifts.filter(({ before, after }) => before !== null || after !== null);
  const first = FIRST_MEASURES.flatMap((name) => known.filter(({ measure }) => measure === name));
  const others = known.filter(({ measure }) => !FIRST_MEASURES.includes(measure));
  return (
    <figure class="chart compared" aria-labelledby={id}>
      <figcaption>
        <h3 id={id} dir="auto">
          {title}
        </h3>
        <p class="about">{say.counted(group.strokesBefore, group.strokesAfter)}</p>
      </figcaption>
      {isCompared(group) ? (
        <>
          <p class="summary">{changedText(group)}</p>
          <Profile group={group} scale={scale} />
          <Scroll of={title}>
            <ShiftTable caption={say.tableCaption(referenceText(room))} shifts={first} titles={titles} />
          </Scroll>
          <details class="no-print">
            <summary>{say.moreNumbers(title)}</summary>
            <Scroll of={say.moreNumbers(title)}>
              <ShiftTable caption={say.otherMeasures(referenceText(room))} shifts={others} titles={titles} />
              <ProfileTable group={group} />
            </Scroll>
          </details>
        </>
      ) : (
        <p class="note">{say.tooFewHere}</p>
      )}
    </figure>
  );
}
