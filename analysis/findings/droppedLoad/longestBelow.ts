/**
 * The longest stretch of bins that lie below a limit, the first of those as long: from its first bin on so many, of which
 * `known` were read. What is not known (NaN) between two that lie below ends no stretch: a side that its controller stops
 * every now and then is read in between only.
 */
export function longestBelow(
  ratios: Float64Array,
  limit: number,
): { readonly first: number; readonly bins: number; readonly known: number } {
  let best = { first: 0, bins: 0, known: 0 };
  let first = 0;
  let known = 0;
  ratios.forEach((ratio, bin) => {
    if (ratio >= limit) known = 0;
    if (!(ratio < limit)) return;
    if (known === 0) first = bin;
    known++;
    const bins = bin - first + 1;
    if (bins > best.bins) best = { first, bins, known };
  });
  return best;
}
