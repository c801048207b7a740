import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';

/** What the lines, grounds and intervals of the sheet are. */
export function SheetKeys() {
  const say = compareWords;
  return (
    <ul class="keys compare-keys" aria-label={words.keys}>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-band-before" d="M1 2h26v10h-26z" />
          <path class="profile-before" d="M1 7h26" />
        </svg>
        {say.beforeKey}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-band-after" d="M1 2h26v10h-26z" />
          <path class="profile-after" d="M1 7h26" />
        </svg>
        {say.afterKey}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-changed" d="M1 0h26v14h-26z" />
          <path class="profile-bar" d="M1 13h26" />
        </svg>
        {say.changed}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="interval-zero" d="M6 0v14" />
          <path class="interval-span" d="M11 7h15" />
          <path class="interval-point" d="M18 7h0" />
        </svg>
        {say.intervalKey}
      </li>
    </ul>
  );
}
