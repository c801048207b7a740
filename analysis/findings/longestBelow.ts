/** The longest run of bins in a row that lie below a limit, the first of those as long; NaN ends a run. */
export function longestBelow(
  ratios: Float64Array,
  limit: number,
): { readonly first: number; readonly bins: number } {
  let best = { first: 0, bins: 0 };
  let bins = 0;
  ratios.forEach((ratio, bin) => {
    bins = ratio < limit ? bins + 1 : 0;
    if (bins > best.bins) best = { first: bin - bins + 1, bins };
  });
  return best;
}
