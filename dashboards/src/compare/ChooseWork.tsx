import type { Page, Service } from '../api/types.ts';
import { Moment } from '../components/told/Moment.tsx';
import { sideName } from '../sideName.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';
import { serviceAddress } from './question.ts';

interface ChooseWorkProps {
  readonly services: Page<Service>;
  readonly roomId: string;
  /** The work that is shown; null: none. */
  readonly chosen: string | null;
}

/** The work done on a room, each a link to before against after it. */
export function ChooseWork({ services, roomId, chosen }: ChooseWorkProps) {
  if (services.items.length === 0) return <p class="about">{words.services.empty}</p>;
  return (
    <ul class="works">
      {services.items.map((service) => (
        <li key={service.id}>
          <a
            href={serviceAddress(roomId, service.id)}
            aria-current={service.id === chosen ? 'page' : undefined}
            dir="auto"
          >
            {words.services.kinds[service.kind]}
            {service.side !== null && `, ${sideName(service.side)}`}
          </a>{' '}
          <span class="about">
            <Moment at={service.at} />
            {service.id === chosen && `${words.joint}${compareWords.shown}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
