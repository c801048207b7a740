import type { ComparedGroup } from '../api/types.ts';
import { tickNumber } from '../charts/drawn/tickNumber.ts';
import type { Scale } from '../small/roundScale.ts';
import { words } from '../words.ts';

/** The picture's own units; it is stretched to the place it gets, and its strokes are not. */
const WIDTH = 640;
const HEIGHT = 100;

/** How high a current stands, from the top downwards. */
const heightOf = (amps: number, { bottom, top }: Scale): string =>
  (HEIGHT * (1 - (Math.max(bottom, amps) - bottom) / (top - bottom))).toFixed(1);

/** The course of one mean profile; bins without a value are gaps. */
function course(profile: readonly (number | null)[], scale: Scale): string {
  let drawing = false;
  return profile
    .map((amps, bin) => {
      if (amps === null) {
        drawing = false;
        return '';
      }
      const x = ((bin + 0.5) / profile.length) * WIDTH;
      const step = `${drawing ? 'L' : 'M'}${x.toFixed(1)} ${heightOf(amps, scale)}`;
      drawing = true;
      return step;
    })
    .join('');
}

/** The ground between the lowest and the highest stroke. */
function bandShape({ lower, upper }: ComparedGroup['bandBefore'], scale: Scale): string {
  const known = upper.flatMap((high, bin) => (high === null || lower[bin] === null ? [] : [bin]));
  if (known.length === 0) return '';
  const point = (amps: number | null, bin: number) => {
    const x = ((bin + 0.5) / upper.length) * WIDTH;
    return `${x.toFixed(1)} ${heightOf(amps ?? 0, scale)}`;
  };
  const there = known.map((bin) => point(upper[bin], bin));
  const back = known.map((bin) => point(lower[bin], bin)).reverse();
  return `M${[...there, ...back].join('L')}z`;
}

/** Both bands and mean profiles over the travel; where they differ surely, the ground is shaded and barred at its foot. */
export function Profile({ group, scale }: { readonly group: ComparedGroup; readonly scale: Scale }) {
  const { bottom, top } = scale;
  return (
    <div class="profile" aria-hidden="true">
      <div class="profile-amps">
        {[top, (top + bottom) / 2, bottom].map((amps) => (
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
        <path class="profile-band profile-band-before" d={bandShape(group.bandBefore, scale)} />
        <path class="profile-band profile-band-after" d={bandShape(group.bandAfter, scale)} />
        <path class="profile-before" d={course(group.profileBefore, scale)} />
        <path class="profile-after" d={course(group.profileAfter, scale)} />
      </svg>
      <div class="profile-travel">
        <span>{words.fullyIn}</span>
        <span>{words.fullyOut}</span>
      </div>
    </div>
  );
}
