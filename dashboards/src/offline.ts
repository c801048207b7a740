/** The first data of a visit on a slow network goes before what only a later visit needs. */
const AFTER_MS = 2_000;

/** Has the pages kept on the device. Browsers allow it on https and on the machine itself only. */
export function keepPagesOnDevice(): void {
  if (!('serviceWorker' in navigator)) return;
  // Without it the pages work as before, with a network.
  const register = () => void navigator.serviceWorker.register('/worker.js').catch(() => {});
  const soon = () => setTimeout(register, AFTER_MS);
  if (document.readyState === 'complete') soon();
  else window.addEventListener('load', soon);
}
