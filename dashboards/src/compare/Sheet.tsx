import type { MeasureTitle, Warning } from '../api/types.ts';
import { toldHere } from '../format.ts';
import { sideInSentence } from '../sideName.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';
import { Answer } from './Answer.tsx';
import { Group } from './Group.tsx';
import { Heads, type HeadsProps } from './Heads.tsx';
import { isCompared } from './isCompared.ts';
import { profileScale } from './profileScale.ts';
import { SheetKeys } from './SheetKeys.tsx';

interface SheetProps extends HeadsProps {
  readonly warnings: readonly Warning[] | null;
  readonly titles: readonly MeasureTitle[];
}

/** The whole finding, in the order in which it is read aloud to a customer. Prints on one page. */
export function Sheet(props: SheetProps) {
  const say = compareWords;
  const { comparison, titles, question, service, warnings } = props;
  const answered = comparison.groups.some(isCompared);
  const scale = profileScale(comparison.groups);
  return (
    <article class="sheet">
      <section class="answer finding" aria-labelledby="finding">
        <h2 id="finding" class="finding-title">
          {say.finding}
        </h2>
        {(question.kind === 'spans' || service !== null) && (
          <Answer comparison={comparison} service={service} warnings={warnings} />
        )}
        <p>{toldHere(comparison.sentence)}</p>
        {!answered && (
          <>
            <p>{question.kind === 'spans' ? say.tooFewInSpans : say.tooFew}</p>
            <ul>
              {comparison.groups.map((group) => (
                <li key={`${group.side}/${group.direction}`} dir="auto">
                  {say.group(sideInSentence(group.side), words.doing[group.direction])}
                  {': '}
                  {say.counted(group.strokesBefore, group.strokesAfter)}
                </li>
              ))}
            </ul>
          </>
        )}
      </section>
      <Heads {...props} />
      {answered && (
        <section aria-labelledby="compared">
          <h2 id="compared">{say.pictures}</h2>
          <SheetKeys />
          <div class="pair compared-groups">
            {comparison.groups.map((group) => (
              <Group
                key={`${group.side}/${group.direction}`}
                room={props.room}
                group={group}
                titles={titles}
                scale={scale}
              />
            ))}
          </div>
        </section>
      )}
      <section class="cautions" aria-labelledby="cautions">
        <h2 id="cautions">{say.cautionsTitle}</h2>
        <ul>
          {say.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <p class="method">
        <strong>{say.method}</strong> {toldHere(comparison.method)} {say.ownScale}
      </p>
    </article>
  );
}
