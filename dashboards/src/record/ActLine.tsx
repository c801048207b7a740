import type { RecordedAct } from '../api/types.ts';
import { Moment } from '../components/told/Moment.tsx';
import { recordWords } from '../words/record.ts';
import { words } from '../words.ts';
import { factsOf } from './facts.ts';
import { actWord } from './kinds.ts';

/** One act: what was done, to what, by whom and when. */
export function ActLine({ act }: { readonly act: RecordedAct }) {
  const facts = factsOf(act);
  return (
    <li>
      <strong>{actWord(act.act)}</strong>
      {facts.length > 0 && (
        <>
          {words.joint}
          <span dir="auto">{facts.join(words.joint)}</span>
        </>
      )}
      {act.coachId !== null && act.coachName !== null && (
        <>
          {words.joint}
          <a href={`/coaches/${act.coachId}`} dir="auto">
            {act.coachName}
          </a>
        </>
      )}
      <div class="about">
        <span dir="auto">{act.by?.name ?? recordWords.record.nobody}</span>
        {words.joint}
        <Moment at={act.at} />
      </div>
    </li>
  );
}
