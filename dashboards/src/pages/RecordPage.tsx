import { saveCsv } from '../api/saveCsv.ts';
import type { RecordedAct } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { plainCount } from '../format.ts';
import { ForDealers } from '../people/ForDealers.tsx';
import { ActLine } from '../record/ActLine.tsx';
import { recordAddress, recordPath, recordQuestionOf } from '../record/question.ts';
import { RecordFilters } from '../record/RecordFilters.tsx';
import { replaceAddress, useSearch } from '../router.ts';
import { recordWords } from '../words/record.ts';

const AT_ONCE = 50;

/** What was done in the account and by whom, for its dealers; nobody can change it. */
export function RecordPage() {
  return (
    <ForDealers title={recordWords.record.title}>
      <Acts />
    </ForDealers>
  );
}

function Acts() {
  const say = recordWords.record;
  const question = recordQuestionOf(useSearch());
  const path = recordPath(question);
  const list = usePages<RecordedAct>(path, AT_ONCE);
  const saving = useSending();
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">{say.lead}</p>
      <RecordFilters question={question} onChange={(asked) => replaceAddress(recordAddress(asked))} />
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <section class="empty">
              <h2>{say.none}</h2>
              <p>{say.noneHint}</p>
            </section>
          ) : (
            <>
              <div class="list-head">
                <p class="about" role="status">
                  {say.shown(plainCount(list.items.length), list.hasMore)}
                </p>
                <button
                  type="button"
                  class="quiet"
                  aria-disabled={saving.busy}
                  onClick={() => void saving.send(() => saveCsv([path], say.fileName))}
                >
                  {saving.busy ? say.saving : say.save}
                </button>
              </div>
              {saving.problem !== null && <Failure problem={saving.problem} />}
              <ul class="works">
                {list.items.map((act) => (
                  <ActLine key={act.id} act={act} />
                ))}
              </ul>
            </>
          )
        }
      </Loaded>
      <More list={list} />
    </section>
  );
}
