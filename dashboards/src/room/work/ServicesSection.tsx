import type { Room, ServiceSeen } from '../../api/types.ts';
import { usePages } from '../../api/usePages.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import { serviceAddress } from '../../compare/question.ts';
import { More } from '../../components/coming/More.tsx';
import { Loaded } from '../../components/coming/states.tsx';
import { Works } from '../../components/focus/Works.tsx';
import { LongText } from '../../components/told/LongText.tsx';
import { Moment } from '../../components/told/Moment.tsx';
import { dayText } from '../../format.ts';
import { sideName } from '../../sideName.ts';
import { words } from '../../words.ts';
import { Helped } from './Helped.tsx';
import { RecordService } from './RecordService.tsx';
import { WorkTools } from './WorkTools.tsx';

/** The id of the section. */
export const WORK = 'services';

/** Below them stands the rest of the room's page. */
const SERVICES_AT_ONCE = 5;

/** Whether work helped is told of the latest; of earlier work the page of before and after tells it. */
const TOLD_OF = 3;

interface SectionProps {
  readonly room: Room;
  readonly version: string;
  readonly onChange: () => void;
}

export function ServicesSection({ room, version, onChange }: SectionProps) {
  const list = usePages<ServiceSeen>(`/rooms/${room.id}/services`, SERVICES_AT_ONCE);
  useRefresh(version, list.first.reload);
  return (
    <section aria-labelledby={WORK} class="services">
      <h2 id={WORK}>{words.services.title}</h2>
      <RecordService room={room} onChange={onChange} />
      <Loaded load={list.first}>
        {() => (
          <Works items={list.items} none={words.services.empty}>
            {(service, i) => (
              <li key={service.id}>
                <div class="work-line">
                  <span>
                    <strong>{words.services.kinds[service.kind]}</strong>
                    {service.side !== null && <span dir="auto">, {sideName(service.side)}</span>}
                    <span class="about">
                      {' '}
                      <Moment at={service.at} />
                    </span>
                  </span>
                  <a
                    href={serviceAddress(room.id, service.id)}
                    aria-label={words.services.compareOf(
                      words.services.kinds[service.kind],
                      dayText(service.at),
                    )}
                  >
                    {words.services.compare}
                  </a>
                </div>
                {service.notes !== null && service.notes !== '' && <LongText text={service.notes} />}
                {i < TOLD_OF && <Helped roomId={room.id} serviceId={service.id} version={version} />}
                {service.mayChange && <WorkTools room={room} work={service} onChange={onChange} />}
              </li>
            )}
          </Works>
        )}
      </Loaded>
      <More list={list} />
      <p>
        <a class="alone" href={`/rooms/${room.id}/compare`}>
          {words.services.anySpans}
        </a>
      </p>
    </section>
  );
}
