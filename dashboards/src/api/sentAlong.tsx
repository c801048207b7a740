import { giveAnswers } from './knownAnswers.ts';

const ID = 'answers';

type Answers = readonly (readonly [string, unknown])[];

/** Answers that come along with a page that the service drew: behind it, so that it can be seen before they are there. */
export function SentAlong({ answers }: { readonly answers: Answers }) {
  return <data id={ID} hidden value={JSON.stringify(answers)} />;
}

/** Takes them out of the page: there they would outlast the session. */
export function takeSentAlong(): void {
  const held = document.getElementById(ID);
  if (!(held instanceof HTMLDataElement)) return;
  // It was written above, by pages of this very build.
  giveAnswers(JSON.parse(held.value) as Answers);
  held.remove();
}
