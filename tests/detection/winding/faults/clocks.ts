import { type LabelParts, namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { drawOnset, type FaultRecipe, lastingFault } from '../fault.ts';

const KIND = 'sensor-doubt';

/** A clock that stops and leaps: the times that the logger sends have holes of seconds. */
export const leapingClock: FaultRecipe = {
  name: 'leaping-clock',
  needs: { sendsTimes: true },
  draw(room, random, strokes) {
    const label: LabelParts = { kind: KIND, severity: 1, side: namedSide(room, null) };
    return lastingFault('leaping-clock', drawOnset(random, strokes), label, (state, _, chance) => {
      const leaps = chance.integer(1, 3);
      for (let leap = 0; leap < leaps; leap++) {
        state.clockLeaps.push([chance.uniform(0.15, 0.85) * room.durationS, chance.uniform(3, 12)]);
      }
    });
  },
};

/** The logger samples at half or twice the rate that it tells. */
export const wrongRate: FaultRecipe = {
  name: 'wrong-rate',
  needs: { sendsTimes: false, leastRateHz: 20 },
  draw(room, random, strokes) {
    const rate = random.pick([0.5, 2]);
    const alsoFits: LabelParts['alsoFits'] = rate > 1 ? ['short-travel'] : [];
    const label: LabelParts = { kind: KIND, alsoFits, severity: rate, side: namedSide(room, null) };
    return lastingFault('wrong-rate', drawOnset(random, strokes), label, (state) => {
      state.clockRate = rate;
    });
  },
};
