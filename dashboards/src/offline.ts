/** The first data of a visit on a slow network goes before what only a later visit needs. */
const AFTER_MS = 2_000;

/** Has the pages kept on the device. Browsers allow it on https and on the machine itself only. */
export function keepPagesOnDevice(): void {
  if (!('serviceWorker' in navigator)) return;
  const register = () => {
    // Without it the pages work as before, with a network.
    navigator.serviceWorker.register('/worker.js').catch(() => {});
  };
  window.addEventListener('load', () => setTimeout(register, AFTER_MS));
}
