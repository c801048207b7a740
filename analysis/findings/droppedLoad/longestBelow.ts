/**
 * The longest stretch of bins below a limit; of several as long, the first. It has `bins` bins from `first` on, of
 * which `known` were read. Unknown bins (NaN) between two low ones do not end a stretch: a side that its controller
 * stops every now and then is read only in between. All 0 where no bin is below the limit.
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
