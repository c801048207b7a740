import './styles/tokens.css';
import './styles/base.css';
import './styles/parts.css';
import './styles/pages.css';
import './styles/coaches.css';
import './styles/forms.css';
import './styles/compare.css';
import './styles/upload.css';
import './styles/touch.css';
import './styles/print.css';

/** Until what stands there can be seen: to take the pages' code in takes a phone longer than to paint that. */
function painted(): Promise<void> {
  if (document.hidden) return Promise.resolve();
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}

const place = document.getElementById('app');
if (place === null) throw new Error('The page has no element with the id app.');
// The service may have drawn the page already.
if (place.firstChild !== null) await painted();
const { start } = await import('./start.tsx');
start(place);
