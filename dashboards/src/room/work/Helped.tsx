import type { Comparison } from '../../api/types.ts';
import { useLoad } from '../../api/useLoad.ts';
import { useRefresh } from '../../api/useRefresh.ts';
import { isCompared } from '../../compare/isCompared.ts';
import { toldHere } from '../../format.ts';
import { words } from '../../words.ts';

interface HelpedProps {
  readonly roomId: string;
  readonly serviceId: string;
  readonly version: string;
}

/** Whether the work helped, in a sentence, once there are strokes enough to tell; until then, what it still takes. */
export function Helped({ roomId, serviceId, version }: HelpedProps) {
  const load = useLoad<Comparison>(`/rooms/${roomId}/comparison?service=${serviceId}`);
  useRefresh(version, load.reload);
  if (load.value === null) return null;
  const say = words.services;
  const told = load.value.groups.some(isCompared);
  return (
    <p class="helped">
      <strong>{say.helped}</strong> {told ? toldHere(load.value.sentence) : say.tooSoon}
    </p>
  );
}
