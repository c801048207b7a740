import type { ComparedGroup } from '../api/types.ts';
import { tickNumber } from '../charts/axes.ts';
import { words } from '../words.ts';

/** The picture's own units; it is stretched to the place it gets, and its strokes are not. */
const WIDTH = 640;
const HEIGHT = 100;

/** The next round number above: 1, 2 or 5 times a power of ten, in halves of it. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(value, 0.1)));
  return Math.ceil(value / (power / 2)) * (power / 2);
}

/** The highest of all means: one scale for all pictures, so that they can be compared by eye. */
export function topAmps(groups: readonly ComparedGroup[]): number {
  const all = groups.flatMap((group) => [...group.profileBefore, ...group.profileAfter]);
  return roundUp(all.reduce<number>((top, amps) => Math.max(top, amps ?? 0), 0.1) * 1.05);
}

/** The course of one mean profile; bins without a value are gaps. */
function course(profile: readonly (number | null)[], top: number): string {
  let drawing = false;
  return profile
    .map((amps, bin) => {
      if (amps === null) {
        drawing = false;
        return '';
      }
      const x = ((bin + 0.5) / profile.length) * WIDTH;
      const y = HEIGHT * (1 - Math.max(0, amps) / top);
      const step = `${drawing ? 'L' : 'M'}${x.toFixed(1)} ${y.toFixed(1)}`;
      drawing = true;
      return step;
    })
    .join('');
}

/** Both mean profiles over the travel; where they differ surely, the ground is shaded and barred at its foot. */
export function Profile({ group, top }: { readonly group: ComparedGroup; readonly top: number }) {
  const say = words.compare;
  return (
    <div class="profile" aria-hidden="true">
      <div class="profile-amps">
        {[top, top / 2, 0].map((amps) => (
          <span key={amps}>{tickNumber(amps)} A</span>
        ))}
      </div>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true" focusable="false">
        <path class="profile-grid" d={`M0 0H${WIDTH}M0 ${HEIGHT / 2}H${WIDTH}M0 ${HEIGHT}H${WIDTH}`} />
        {group.changedBins.map(({ from, to }) => (
          <g key={from}>
            <path class="profile-changed" d={`M${from * WIDTH} 0H${to * WIDTH}V${HEIGHT}H${from * WIDTH}z`} />
            <path class="profile-bar" d={`M${from * WIDTH} ${HEIGHT}H${to * WIDTH}`} />
          </g>
        ))}
        <path class="profile-before" d={course(group.profileBefore, top)} />
        <path class="profile-after" d={course(group.profileAfter, top)} />
      </svg>
      <div class="profile-travel">
        <span>{say.fullyIn}</span>
        <span>{say.fullyOut}</span>
      </div>
    </div>
  );
}
