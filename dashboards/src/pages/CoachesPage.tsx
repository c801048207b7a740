import { useContext, useState } from 'preact/hooks';
import { FIRST_FEW_COACHES } from '../api/questions.ts';
import type { CoachOverview, Page } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { CoachHere } from '../coach/CoachHere.tsx';
import { DeletedCoaches } from '../coach/DeletedCoaches.tsx';
import { Loaded, Waiting } from '../components/coming/states.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { Lot } from '../lot/Lot.tsx';
import { useLook } from '../lot/useLook.ts';
import { SessionContext } from '../session.ts';
import { words } from '../words.ts';

const EVERY_MS = 60_000;

function Empty({ mayAdd }: { readonly mayAdd: boolean }) {
  return (
    <section class="empty">
      <h2>{words.coaches.empty}</h2>
      <p>{mayAdd ? words.coaches.emptyHint : words.coaches.emptyOwner}</p>
    </section>
  );
}

/** Where everybody begins: the lot, or, for the owner of one coach, that coach's rooms. */
export function CoachesPage() {
  const { person } = useContext(SessionContext);
  const since = useLook();
  const few = useLoad<Page<CoachOverview>>(FIRST_FEW_COACHES, ({ items }) =>
    items.length === 1 ? EVERY_MS : null,
  );
  const [changes, setChanges] = useState(0);
  const changed = () => {
    few.reload();
    setChanges(changes + 1);
  };
  const mayAdd = person !== null && person.role !== 'owner';
  const only = few.value?.items.length === 1 ? few.value.items[0] : null;
  if (only !== null && only.role === 'owner') return <CoachHere coach={only} reload={few.reload} />;
  return (
    <>
      <div class="title-line">
        <PageTitle text={words.coaches.title} />
        {mayAdd && (
          <a class="button" href="/new-coach">
            {words.coaches.add}
          </a>
        )}
      </div>
      <Loaded load={few}>
        {({ items }) => {
          if (items.length === 0) return <Empty mayAdd={mayAdd} />;
          return since === undefined ? (
            <Waiting />
          ) : (
            <Lot key={changes} since={since} looksAtFew={items.length === 1 || person?.role === 'owner'} />
          );
        }}
      </Loaded>
      {person?.role === 'dealer' && <DeletedCoaches onChange={changed} />}
    </>
  );
}
