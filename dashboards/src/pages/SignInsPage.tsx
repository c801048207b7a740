import { useState } from 'preact/hooks';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { ChangePassword } from '../signIns/ChangePassword.tsx';
import { Places } from '../signIns/Places.tsx';
import { Tokens } from '../signIns/Tokens.tsx';
import { peopleWords } from '../words/people.ts';

/** How the person signs in: where it is, its password, its tokens. */
export function SignInsPage() {
  const [changes, setChanges] = useState(0);
  return (
    <section class="narrow">
      <PageTitle text={peopleWords.signIns.title} />
      <p class="lead">{peopleWords.signIns.lead}</p>
      <Places version={String(changes)} />
      <ChangePassword onChanged={() => setChanges((n) => n + 1)} />
      <Tokens />
    </section>
  );
}
