import { useState } from 'preact/hooks';
import type { Colleague, Invited } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Loaded } from '../components/coming/states.tsx';
import { Works } from '../components/focus/Works.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Opens } from '../forms/Opens.tsx';
import { ForDealers } from '../people/ForDealers.tsx';
import { InviteForm } from '../people/InviteForm.tsx';
import { PersonLine } from '../people/PersonLine.tsx';
import { joinLink, ShownOnce } from '../people/ShownOnce.tsx';
import { peopleWords } from '../words/people.ts';
import { recordWords } from '../words/record.ts';

const AT_ONCE = 100;

/** Who belongs to the account: a dealer invites, changes and removes. */
export function PeoplePage() {
  return (
    <ForDealers title={peopleWords.people.title}>
      <People />
    </ForDealers>
  );
}

function People() {
  const say = peopleWords.people;
  const list = usePages<Colleague>('/people', AT_ONCE);
  const [invited, setInvited] = useState<Invited | null>(null);
  const added = (one: Invited) => {
    setInvited(one);
    list.first.reload();
  };
  return (
    <section class="narrow">
      <PageTitle text={say.title} />
      <p class="lead">
        {say.lead} <a href="/record">{recordWords.record.title}</a>
      </p>
      {invited !== null && (
        <ShownOnce
          label={say.link}
          about={say.linkOnce(invited.person.name)}
          text={joinLink(invited.invitation)}
          close={say.linkKept}
          onClose={() => setInvited(null)}
        />
      )}
      <Opens title={say.invite}>
        <InviteForm onDone={added} />
      </Opens>
      <Loaded load={list.first}>
        {() => (
          <Works items={list.items}>
            {(person) => (
              <PersonLine key={person.id} person={person} onChange={list.first.reload} onInvited={added} />
            )}
          </Works>
        )}
      </Loaded>
      <More list={list} />
    </section>
  );
}
