import { useContext, useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { SessionContext } from '../session.ts';

/** When the person last looked over the coaches on an earlier visit; undefined until it is known. */
export function useLook(): string | null | undefined {
  const { epoch } = useContext(SessionContext);
  const [since, setSince] = useState<string | null | undefined>(undefined);
  useEffect(() => {
    let wanted = true;
    call<{ lastLookAt: string | null }>('/overview/look', { method: 'POST' }).then(
      ({ lastLookAt }) => wanted && setSince(lastLookAt),
      // The list is worth more than what changed in it.
      () => wanted && setSince((held) => held ?? null),
    );
    return () => {
      wanted = false;
    };
  }, [epoch]);
  return since;
}
