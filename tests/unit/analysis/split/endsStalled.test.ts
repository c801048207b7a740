import { expect, test } from 'vitest';
import { endsStalled } from '../../../../analysis/split/endsStalled.ts';
import { steadyCurrent } from '../../../../analysis/split/steadyCurrent.ts';

const RATE_HZ = 50;
const RUNNING_AMPS = 6;
const STALL_AMPS = 20;

/** A rest, a drive at `RUNNING_AMPS`, a stall and a rest again, each of so many seconds. Answers whether it ends stalled. */
function stalls({ drivenS, stalledS }: { readonly drivenS: number; readonly stalledS: number }): boolean {
  const parts = [
    { amps: 0, forS: 1 },
    { amps: RUNNING_AMPS, forS: drivenS },
    { amps: STALL_AMPS, forS: stalledS },
    { amps: 0, forS: 2 },
  ];
  const amps = Float64Array.from(
    parts.flatMap((part) => Array.from({ length: Math.round(part.forS * RATE_HZ) }, () => part.amps)),
  );
  const timesS = amps.map((_, i) => i / RATE_HZ);
  const from = RATE_HZ;
  const to = from + Math.round((drivenS + stalledS) * RATE_HZ);
  return endsStalled(timesS, [{ amps, steady: steadyCurrent(amps) }], { from, to });
}

test('a drive that ends with the motor at standstill ends stalled', () => {
  expect(stalls({ drivenS: 10, stalledS: 0.5 })).toBe(true);
});

test('one that is switched off on its way does not, nor for a spark', () => {
  expect(stalls({ drivenS: 10, stalledS: 0 })).toBe(false);
  expect(stalls({ drivenS: 10, stalledS: 0.06 })).toBe(false);
});

test('a press at the stop is no drive that ended there', () => {
  expect(stalls({ drivenS: 1.2, stalledS: 0.5 })).toBe(false);
});
