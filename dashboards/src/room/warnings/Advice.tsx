import { useEffect, useRef } from 'preact/hooks';
import type { Warning } from '../../api/types.ts';
import { words } from '../../words.ts';

/** The id of the checks of the first warning of a page. */
export const CHECKS = 'checks';

/**
 * What to check, each check with its own cautions right before it; what goes for all of it stands above, as nobody
 * should begin before reading it, and what must never be done stands below.
 */
export function Advice({ warning, isFirst }: { readonly warning: Warning; readonly isFirst: boolean }) {
  const place = useRef<HTMLDivElement>(null);
  // Whoever came by a link to the checks was on the page before they were.
  useEffect(() => {
    if (isFirst && location.hash === `#${CHECKS}`) place.current?.scrollIntoView();
  }, []);
  const say = words.warnings;
  const [first, ...others] = warning.cautions;
  // A caution that goes for every check is said once, above them.
  const steps = warning.steps.map(({ check, cautions }) => ({
    check,
    cautions: cautions.filter((caution) => caution !== first),
  }));
  const told = new Set(steps.flatMap((step) => step.cautions));
  const never = others.filter((caution) => !told.has(caution));
  return (
    <div class="advice" id={isFirst ? CHECKS : undefined} ref={place}>
      {first !== undefined && (
        <div class="cautions">
          <h4>{say.before}</h4>
          <p>{first}</p>
        </div>
      )}
      {steps.length > 0 && (
        <div>
          <h4>{say.checks}</h4>
          <ol class="steps">
            {steps.map(({ check, cautions }) => (
              <li key={check}>
                {cautions.map((caution) => (
                  <p key={caution} class="mind">
                    {caution}
                  </p>
                ))}
                <p>{check}</p>
              </li>
            ))}
          </ol>
        </div>
      )}
      <div class="cautions">
        <h4>{say.never}</h4>
        <ul>
          <li>{say.noForce}</li>
          {never.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </div>
      <div>
        <h4>{say.stopTitle}</h4>
        <p>{say.stopWhen[warning.severity]}</p>
      </div>
    </div>
  );
}
