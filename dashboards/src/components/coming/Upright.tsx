import type { ComponentChildren } from 'preact';
import { useErrorBoundary } from 'preact/hooks';
import { asProblem } from '../../api/client.ts';
import { Failure } from './states.tsx';

/** A page that cannot be drawn says so, and the way to all others stays open; the fault is told to the browser as any other. */
export function Upright({ children }: { readonly children: ComponentChildren }) {
  const [fault] = useErrorBoundary((error: unknown) => reportError(error));
  if (fault === undefined) return <>{children}</>;
  return <Failure problem={asProblem(fault)} retry={() => location.reload()} />;
}
