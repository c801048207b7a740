import type { Direction } from '../../../../analysis/trace.ts';
import type { StrokeCondition } from '../condition.ts';
import { always, type FaultKind, plan } from './fault.ts';

/** How a stroke comes to end early: against something, or because the controller or a switch stops it. */
function shortTravel(name: string, ends: StrokeCondition['ends']): FaultKind {
  return {
    name,
    fits: always,
    draw(room, onsetStroke, random) {
      const direction = random.pick<Direction>(['extend', 'retract']);
      const missing = random.between(0.09, 0.3);
      const early = direction === 'extend' ? 1 - missing : missing;
      // Pushed home by hand, the way back is whole again; else it begins where the way out ended.
      const pushedHome = random.chance(0.5);
      return plan(
        name,
        room,
        { kind: 'short-travel', severity: missing, onsetStroke, direction },
        (condition, { broken }, source) => {
          if (broken) return condition;
          const place = early + 0.006 * source.normal();
          if (condition.direction === direction) return { ...condition, to: place, ends, jogAfterS: 0 };
          return pushedHome ? condition : { ...condition, from: place };
        },
      );
    },
  };
}

export const shortAgainst = shortTravel('short-against', 'stall');

export const shortCut = shortTravel('short-cut', 'let-go');
