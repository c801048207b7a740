import type { Room, Service } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { Moment } from '../components/Moment.tsx';
import { More } from '../components/More.tsx';
import { Loaded } from '../components/states.tsx';
import { words } from '../words.ts';
import { RecordService } from './RecordService.tsx';

const SERVICES_AT_ONCE = 20;

export function ServicesSection({ room, onChange }: { readonly room: Room; readonly onChange: () => void }) {
  const list = usePages<Service>(`/rooms/${room.id}/services`, SERVICES_AT_ONCE);
  const recorded = () => {
    list.first.reload();
    onChange();
  };
  return (
    <section aria-labelledby="services" class="services">
      <h2 id="services">{words.services.title}</h2>
      <RecordService room={room} onDone={recorded} />
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <p class="about">{words.services.empty}</p>
          ) : (
            <ul class="works">
              {list.items.map((service) => (
                <li key={service.id}>
                  <strong>{words.services.kinds[service.kind]}</strong>
                  {service.side !== null && <span dir="auto">, {service.side}</span>}
                  <span class="about">
                    {' '}
                    <Moment at={service.at} />
                  </span>
                  {service.notes !== null && service.notes !== '' && (
                    <p class="notes" dir="auto">
                      {service.notes}
                    </p>
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
      <More list={list} />
    </section>
  );
}
