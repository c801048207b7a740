import { hydrate, render } from 'preact';
import { askEarly } from './api/early.ts';
import { takeSentAlong } from './api/sentAlong.tsx';
import { App } from './app.tsx';
import { keepPagesOnDevice } from './offline.ts';

/** Begins with an empty place, or takes over what the service has drawn there. */
export function start(place: HTMLElement): void {
  takeSentAlong();
  askEarly(location.pathname);
  if (place.firstChild === null) render(<App />, place);
  else hydrate(<App />, place);
  keepPagesOnDevice();
}
