import type { ComparedShift } from '../api/types.ts';

/** Half the picture's width, in its own units: zero stands at 0, and the interval's far end near the edge. */
const HALF = 100;

/**
 * An interval on a line with zero marked. The row's words say the same, so it is hidden from those who listen. It is
 * stretched to the place it gets; its strokes are not.
 */
export function Interval({ shift }: { readonly shift: ComparedShift }) {
  if (shift.shift === null || shift.lower === null || shift.upper === null) return null;
  const reach = Math.max(Math.abs(shift.lower), Math.abs(shift.upper), Math.abs(shift.shift)) * 1.15 || 1;
  const at = (value: number) => Math.round((value / reach) * HALF * 10) / 10;
  return (
    <svg
      class={shift.excludesZero ? 'interval interval-sure' : 'interval'}
      viewBox={`${-HALF} -10 ${2 * HALF} 20`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      <path class="interval-line" d={`M${-HALF} 0H${HALF}`} />
      <path class="interval-zero" d="M0 -10V10" />
      <path class="interval-span" d={`M${at(shift.lower)} 0H${at(shift.upper)}`} />
      <path class="interval-ends" d={`M${at(shift.lower)} -5V5M${at(shift.upper)} -5V5`} />
      <path class="interval-point" d={`M${at(shift.shift)} 0h0`} />
    </svg>
  );
}
