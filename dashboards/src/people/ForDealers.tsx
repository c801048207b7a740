import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import { Waiting } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { SessionContext } from '../session.ts';
import { peopleWords } from '../words/people.ts';

interface ForDealersProps {
  readonly title: string;
  readonly children: ComponentChildren;
}

/** A page that only dealers have: others are told so, and offered nothing that the service would refuse. */
export function ForDealers({ title, children }: ForDealersProps) {
  const { person } = useContext(SessionContext);
  if (person?.role === 'dealer') return <>{children}</>;
  return (
    <section class="narrow">
      <PageTitle text={title} />
      {person === null ? (
        <Waiting />
      ) : (
        <p class="lead">{peopleWords.people.forDealers(peopleWords.roles[person.role])}</p>
      )}
    </section>
  );
}
