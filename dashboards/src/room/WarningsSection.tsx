import { useRef, useState } from 'preact/hooks';
import type { Page, Room, Warning } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { Loaded } from '../components/states.tsx';
import { words } from '../words.ts';
import { WarningCard } from './WarningCard.tsx';

interface SectionProps {
  readonly room: Room;
  readonly version: string;
  readonly onChange: () => void;
}

/** Earlier warnings are fetched only when somebody opens them. */
function EarlierWarnings({ room }: { readonly room: Room }) {
  const [opened, setOpened] = useState(false);
  const cleared = useLoad<Page<Warning>>(opened ? `/rooms/${room.id}/warnings?state=cleared` : null);
  return (
    <details class="earlier" onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>{words.warnings.earlier}</summary>
      {opened && (
        <Loaded load={cleared}>
          {({ items }) =>
            items.length === 0 ? (
              <p class="about">{words.warnings.noEarlier}</p>
            ) : (
              items.map((warning) => <WarningCard key={warning.id} warning={warning} room={room} />)
            )
          }
        </Loaded>
      )}
    </details>
  );
}

export function WarningsSection({ room, version, onChange }: SectionProps) {
  const open = useLoad<Page<Warning>>(`/rooms/${room.id}/warnings?state=open`);
  const acknowledged = useLoad<Page<Warning>>(`/rooms/${room.id}/warnings?state=acknowledged`);
  useRefresh(version, open.reload);
  useRefresh(version, acknowledged.reload);
  const heading = useRef<HTMLHeadingElement>(null);
  const changed = () => {
    // The warning that held the focus moves away: the focus must not fall back to the page's top.
    heading.current?.focus();
    onChange();
  };
  const someSeen = acknowledged.value !== null && acknowledged.value.items.length > 0;
  return (
    <section aria-labelledby="warnings">
      <h2 id="warnings" ref={heading} tabIndex={-1}>
        {words.warnings.title}
      </h2>
      <Loaded load={open}>
        {({ items }) =>
          items.length === 0 ? (
            <p class="about">{someSeen ? words.warnings.noneUnseen : words.warnings.none}</p>
          ) : (
            items.map((warning, i) => (
              <WarningCard
                key={warning.id}
                warning={warning}
                room={room}
                isFirst={i === 0}
                onAcknowledged={changed}
              />
            ))
          )
        }
      </Loaded>
      {someSeen && (
        <>
          <h3>{words.warnings.acknowledged}</h3>
          {acknowledged.value?.items.map((warning, i) => (
            <WarningCard
              key={warning.id}
              warning={warning}
              room={room}
              isFirst={i === 0 && open.value?.items.length === 0}
            />
          ))}
        </>
      )}
      <EarlierWarnings room={room} />
    </section>
  );
}
