import { words } from '../../words.ts';

interface Step {
  readonly href: string;
  readonly text: string;
}

/** Where this page stands: links to what holds it, and its nearest holder's name. */
export function Trail({ steps, here }: { readonly steps: readonly Step[]; readonly here: string }) {
  return (
    <nav class="trail" aria-label={words.nav.trail}>
      <ol>
        {steps.map((step) => (
          <li key={step.href}>
            <a href={step.href} dir="auto">
              {step.text}
            </a>
          </li>
        ))}
        {here !== '' && (
          <li>
            <span dir="auto">{here}</span>
          </li>
        )}
      </ol>
    </nav>
  );
}
