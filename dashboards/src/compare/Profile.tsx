import type { ComparedGroup } from '../api/types.ts';
import { tickNumber } from '../charts/tickNumber.ts';
import { words } from '../words.ts';

/** The picture's own units; it is stretched to the place it gets, and its strokes are not. */
const WIDTH = 640;
const HEIGHT = 100;

/** Tops of a scale whose middle is round too, in tenths of the next power of ten. */
const ROUND_TOPS = [1, 1.2, 1.4, 1.6, 2, 2.4, 3, 4, 5, 6, 8, 10];

/** The next round number above. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(value, 0.1)));
  return power * (ROUND_TOPS.find((top) => value <= top * power) ?? 10);
}

/** The highest of all strokes: one scale for all pictures, so that they can be compared by eye. */
export function topAmps(groups: readonly ComparedGroup[]): number {
  const all = groups.flatMap((group) => [...group.bandBefore.upper, ...group.bandAfter.upper]);
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

/** The ground between the lowest and the highest stroke. */
function bandShape({ lower, upper }: ComparedGroup['bandBefore'], top: number): string {
  const known = upper.flatMap((high, bin) => (high === null || lower[bin] === null ? [] : [bin]));
  if (known.length === 0) return '';
  const point = (amps: number | null, bin: number) => {
    const x = ((bin + 0.5) / upper.length) * WIDTH;
    return `${x.toFixed(1)} ${(HEIGHT * (1 - Math.max(0, amps ?? 0) / top)).toFixed(1)}`;
  };
  const there = known.map((bin) => point(upper[bin], bin));
  const back = known.map((bin) => point(lower[bin], bin)).reverse();
  return `M${[...there, ...back].join('L')}z`;
}

/** Both bands and mean profiles over the travel; where they differ surely, the ground is shaded and barred at its foot. */
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
        <path class="profile-band profile-band-before" d={bandShape(group.bandBefore, top)} />
        <path class="profile-band profile-band-after" d={bandShape(group.bandAfter, top)} />
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
