import type { DoneAnalysis } from '../api/types.ts';
import { toldHere } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';

/** The service names its doubts by a word that may be newer than this page. */
function doubtTitle(doubt: string): string {
  const known: Readonly<Record<string, string>> = strokeWords.doubtKinds;
  return known[doubt] ?? doubt;
}

export function Doubts({ doubts }: { readonly doubts: DoneAnalysis['doubts'] }) {
  if (doubts.length === 0) return null;
  return (
    <section class="note" aria-labelledby="doubts">
      <h2 id="doubts">{strokeWords.doubts}</h2>
      <ul>
        {doubts.map((doubt) => (
          <li key={`${doubt.side}/${doubt.doubt}`} dir="auto">
            <strong>
              {doubtTitle(doubt.doubt)}, {sideName(doubt.side)}
            </strong>
            {': '}
            {toldHere(doubt.detail)}
          </li>
        ))}
      </ul>
    </section>
  );
}
