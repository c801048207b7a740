/**
 * Which of the media types on offer an Accept header wants most (RFC 9110, section 12.5.1); the first where it does
 * not say, null where it wants none of them.
 */
export function preferredType<Type extends string>(
  accept: string | undefined,
  offered: readonly Type[],
): Type | null {
  if (accept === undefined || accept.trim() === '') return offered[0];
  const ranges = accept.split(',').map(readRange);
  let best: Type | null = null;
  let bestWeight = 0;
  for (const type of offered) {
    const weight = weightOf(type, ranges);
    if (weight > bestWeight) {
      best = type;
      bestWeight = weight;
    }
  }
  return best;
}

interface Range {
  readonly type: string;
  readonly weight: number;
}

function readRange(text: string): Range {
  const [type, ...parameters] = text.split(';').map((part) => part.trim().toLowerCase());
  const weight = Number(parameters.find((parameter) => parameter.startsWith('q='))?.slice(2) ?? 1);
  return { type, weight: Number.isNaN(weight) ? 1 : weight };
}

/** The most exact range counts. */
function weightOf(type: string, ranges: readonly Range[]): number {
  const [family] = type.split('/');
  for (const wanted of [type, `${family}/*`, '*/*']) {
    const range = ranges.find((one) => one.type === wanted);
    if (range) return range.weight;
  }
  return 0;
}
