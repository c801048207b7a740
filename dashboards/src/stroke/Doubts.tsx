import type { DoneAnalysis } from '../api/types.ts';
import { toldHere } from '../format.ts';
import { strokeWords } from '../words/stroke.ts';
import { doubtLines } from './doubtLines.ts';

export function Doubts({ doubts }: { readonly doubts: DoneAnalysis['doubts'] }) {
  if (doubts.length === 0) return null;
  return (
    <section class="note" aria-labelledby="doubts">
      <h2 id="doubts">{strokeWords.doubts}</h2>
      <ul>
        {doubtLines(doubts).map(({ title, detail }) => (
          <li key={`${title}/${detail}`} dir="auto">
            <strong>{title}</strong>
            {': '}
            {toldHere(detail)}
          </li>
        ))}
      </ul>
    </section>
  );
}
