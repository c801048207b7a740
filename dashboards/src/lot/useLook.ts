import { useContext, useEffect } from 'preact/hooks';
import { call } from '../api/client.ts';
import { LAST_LOOK } from '../api/questions.ts';
import type { Look } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { SessionContext } from '../session.ts';

/**
 * When the person last looked over the coaches on an earlier visit; undefined until it is known. Without a network the
 * lot is shown as it was: against the same look as then.
 */
export function useLook(): string | null | undefined {
  const { epoch } = useContext(SessionContext);
  const look = useLoad<Look>(LAST_LOOK);
  // Noted apart from being asked: a page that the service draws, or that nobody sees, is no look.
  useEffect(() => {
    // The list is worth more than what changes in it until the next visit.
    call<Look>(LAST_LOOK, { method: 'POST' }).catch(() => {});
  }, [epoch]);
  if (look.value !== null) return look.value.lastLookAt;
  return look.problem === null ? undefined : null;
}
