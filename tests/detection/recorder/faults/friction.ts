import { namedSide } from '../../../../server/demo/simulator/faults/fault.ts';
import { changedAt, loadFor } from '../condition.ts';
import { always, type FaultKind, hasTwoSides, plan } from './fault.ts';

const MOST = Math.log(1.65);

/** The whole room runs heavier from one stroke to the next. */
export const frictionStep: FaultKind = {
  name: 'friction-step',
  fits: always,
  draw(room, onsetStroke, random) {
    const rise = random.scaled(0.16, 0.6);
    const label = { kind: 'rising-draw', severity: rise, onsetStroke, side: namedSide(room, null) } as const;
    return plan('friction-step', room, label, (condition) => ({
      ...condition,
      level: condition.level.map((level, side) => level * loadFor(room, side, rise)),
    }));
  },
};

/** The whole room grows heavier stroke by stroke: dirt, dry racks, a sagging floor. */
export const frictionDrift: FaultKind = {
  name: 'friction-drift',
  fits: always,
  draw(room, onsetStroke, random) {
    const rate = random.scaled(0.003, 0.008);
    const label = { kind: 'rising-draw', severity: rate, onsetStroke, side: namedSide(room, null) } as const;
    return plan('friction-drift', room, label, (condition, { index }) => {
      const rise = Math.exp(Math.min(MOST, rate * (index - onsetStroke + 1))) - 1;
      return {
        ...condition,
        level: condition.level.map((level, side) => level * loadFor(room, side, rise)),
      };
    });
  },
};

/** One side's track or rack rubs. */
export const sideStep: FaultKind = {
  name: 'side-step',
  fits: hasTwoSides,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, 1);
    const rise = random.scaled(0.2, 0.7);
    return plan(
      'side-step',
      room,
      {
        kind: 'rising-draw',
        alsoFits: ['uneven-sides', 'late-side'],
        severity: rise,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition) => ({
        ...condition,
        level: changedAt(condition.level, faulty, (level) => level * loadFor(room, faulty, rise)),
      }),
    );
  },
};

/** One side grows heavier stroke by stroke. */
export const sideDrift: FaultKind = {
  name: 'side-drift',
  fits: hasTwoSides,
  draw(room, onsetStroke, random) {
    const faulty = random.whole(0, 1);
    const rate = random.scaled(0.004, 0.01);
    return plan(
      'side-drift',
      room,
      {
        kind: 'rising-draw',
        alsoFits: ['uneven-sides', 'late-side'],
        severity: rate,
        onsetStroke,
        side: namedSide(room, faulty),
      },
      (condition, { index }) => {
        const rise = Math.exp(Math.min(MOST, rate * (index - onsetStroke + 1))) - 1;
        return {
          ...condition,
          level: changedAt(condition.level, faulty, (level) => level * loadFor(room, faulty, rise)),
        };
      },
    );
  },
};

/** A stretch of the travel drags: a bent rail, a swollen floor; the mean over the travel rises by 16 % or more. */
export const stretchFriction: FaultKind = {
  name: 'stretch-friction',
  fits: always,
  draw(room, onsetStroke, random) {
    const length = random.between(0.3, 0.6);
    const rise = random.scaled(0.16, 0.35) / length;
    const from = random.between(0.05, 0.95 - length);
    const edge = 0.03;
    const label = { kind: 'rising-draw', severity: rise * length, onsetStroke } as const;
    return plan('stretch-friction', room, { ...label, side: namedSide(room, null) }, (condition) => ({
      ...condition,
      added: [
        ...condition.added,
        (side, position) => {
          const inside = Math.min(position - from, from + length - position) / edge;
          return (loadFor(room, side, rise) - 1) * Math.max(0, Math.min(1, inside + 0.5));
        },
      ],
    }));
  },
};
