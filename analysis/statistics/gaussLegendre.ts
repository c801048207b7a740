/** Where a function is asked, and what each answer counts; as long as each other. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Nodes (rising) and weights that integrate polynomials of degree 2 `count` - 1 from `from` to `to` exactly.
 * RangeError unless `count` is a whole number above 0.
 *
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 25.4.30, the zeros by Newton's method.
 */
export function gaussLegendre(count: number, from: number, to: number): QuadratureRule {
  if (!(Number.isInteger(count) && count > 0))
    throw new RangeError(`a rule has 1 node or more, not ${count}`);
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  const half = (to - from) / 2;
  for (let i = 0; i < count; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let before = 1;
      let value = x;
      for (let degree = 2; degree <= count; degree++) {
        const next = ((2 * degree - 1) * x * value - (degree - 1) * before) / degree;
        before = value;
        value = next;
      }
      slope = (count * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    nodes[i] = from + half * (x + 1);
    weights[i] = (2 * half) / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
