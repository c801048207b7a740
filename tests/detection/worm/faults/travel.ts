import { planFault, type Recipe } from '../fault.ts';

/** Something lies in the way: the room goes no further, and comes back from there. */
export const obstructed: Recipe = {
  name: 'obstructed',
  needs: () => ({}),
  draw({ onset, random }) {
    const end = random.pick(['extend', 'retract'] as const);
    const short = random.uniform(0.08, 0.35);
    return planFault(
      this.name,
      onset,
      // Both ways are that much shorter; what stands at which end is more than the current says.
      { kind: 'short-travel', severity: short },
      (condition, _, { direction }) => {
        if (direction !== end) {
          condition.from = Math.max(condition.from, short);
          condition.to = Math.min(1, Math.max(condition.to, condition.from + 0.1));
          return;
        }
        if (condition.to <= 1 - short) return;
        condition.to = 1 - short;
        condition.stalls = true;
        condition.from = Math.min(condition.from, condition.to - 0.1);
      },
    );
  },
};

/** It stalls before its end one way, and the rest is cranked by hand: the other way is as long as ever. */
export const crankedHome: Recipe = {
  name: 'cranked home',
  needs: () => ({}),
  draw({ life, onset, random }) {
    const end = random.pick(['extend', 'retract'] as const);
    const short = random.uniform(0.08, 0.35);
    const first = life.findIndex(
      ({ direction, to, from }, index) => index >= onset && direction === end && to === 1 && from === 0,
    );
    return planFault(
      this.name,
      first,
      { kind: 'short-travel', direction: end, severity: short },
      (condition, _, { direction, to, from }) => {
        if (direction === end && to === 1) condition.to = Math.max(1 - short, from + 0.1);
      },
    );
  },
};
