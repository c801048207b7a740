import { useContext, useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { keepAnswer, keptAnswer } from '../api/keptAnswers.ts';
import { SessionContext } from '../session.ts';

const PATH = '/overview/look';

interface Look {
  readonly lastLookAt: string | null;
}

/** Without a network the lot is shown as it was: against the same look as then. */
async function formerLook(): Promise<Look> {
  const kept = await keptAnswer(PATH);
  // What was kept under this path came from it.
  return (kept?.value as Look | undefined) ?? { lastLookAt: null };
}

async function look(): Promise<Look> {
  try {
    const answer = await call<Look>(PATH, { method: 'POST' });
    void keepAnswer(PATH, answer);
    return answer;
  } catch {
    // The list is worth more than what changed in it.
    return formerLook();
  }
}

/** When the person last looked over the coaches on an earlier visit; undefined until it is known. */
export function useLook(): string | null | undefined {
  const { epoch } = useContext(SessionContext);
  const [since, setSince] = useState<string | null | undefined>(undefined);
  useEffect(() => {
    let wanted = true;
    void look().then(({ lastLookAt }) => wanted && setSince(lastLookAt));
    return () => {
      wanted = false;
    };
  }, [epoch]);
  return since;
}
