import type { SupplyTrace } from '../../trace.ts';

/** Volts at each time, straight between the readings, held before the first and after the last. */
export function interpolate(supply: SupplyTrace, timesS: Float64Array): Float64Array {
  const volts = new Float64Array(timesS.length);
  let j = 0;
  for (let i = 0; i < timesS.length; i++) {
    const time = timesS[i];
    while (j < supply.timesS.length - 1 && supply.timesS[j + 1] <= time) j++;
    const next = Math.min(j + 1, supply.timesS.length - 1);
    const span = supply.timesS[next] - supply.timesS[j];
    const part = span > 0 ? Math.min(1, Math.max(0, (time - supply.timesS[j]) / span)) : 0;
    volts[i] = supply.volts[j] + part * (supply.volts[next] - supply.volts[j]);
  }
  return volts;
}
