import { useRef, useState } from 'preact/hooks';
import type { Page, Room, Warning } from '../../api/types.ts';
import { useLoad } from '../../api/useLoad.ts';
import { usePages } from '../../api/usePages.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import { More } from '../../components/coming/More.tsx';
import { Loaded } from '../../components/coming/states.tsx';
import { words } from '../../words.ts';
import { WarningCard } from './WarningCard.tsx';

interface SectionProps {
  readonly room: Room;
  readonly version: string;
  readonly onChange: () => void;
}

const EARLIER_AT_ONCE = 20;

function EarlierWarnings({ room, version }: Omit<SectionProps, 'onChange'>) {
  const cleared = usePages<Warning>(`/rooms/${room.id}/warnings?state=cleared`, EARLIER_AT_ONCE);
  useRefresh(version, cleared.first.reload);
  return (
    <>
      <Loaded load={cleared.first}>
        {() =>
          cleared.items.length === 0 ? (
            <p class="about">{words.warnings.noEarlier}</p>
          ) : (
            cleared.items.map((warning) => <WarningCard key={warning.id} warning={warning} room={room} />)
          )
        }
      </Loaded>
      <More list={cleared} />
    </>
  );
}

export function WarningsSection({ room, version, onChange }: SectionProps) {
  const open = useLoad<Page<Warning>>(`/rooms/${room.id}/warnings?state=open`);
  const acknowledged = useLoad<Page<Warning>>(`/rooms/${room.id}/warnings?state=acknowledged`);
  useRefresh(version, open.reload);
  useRefresh(version, acknowledged.reload);
  const heading = useRef<HTMLHeadingElement>(null);
  const [looksBack, setLooksBack] = useState(false);
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
      <details class="earlier" onToggle={(event) => event.currentTarget.open && setLooksBack(true)}>
        <summary>{words.warnings.earlier}</summary>
        {/* Fetched only when somebody opens them. */}
        {looksBack && <EarlierWarnings room={room} version={version} />}
      </details>
    </section>
  );
}
