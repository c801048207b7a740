import { labelOf } from '../../../../server/demo/simulator/faults/fault.ts';
import { referenceStroke } from '../referenceStroke.ts';
import type { FaultKind } from '../story.ts';

/** Something lies in the way of one direction from now on. */
const obstacle: FaultKind = {
  name: 'obstacle',
  wants: { endings: ['released', 'cut-off', 'timed', 'switch'] },
  draw(plant, calendar, onset, random) {
    const missing = random.between(0.07, 0.25);
    const { index, direction } = calendar.find((each) => each.index >= onset && !each.broken)!;
    const obstacleMetres = plant.travelMetres * (direction === 'extend' ? 1 - missing : missing);
    const label = labelOf(index, { kind: 'short-travel', direction, severity: missing });
    return {
      name: 'obstacle',
      label,
      startsStroke: index,
      services: [],
      apply(condition) {
        if (condition.direction === direction) condition.obstacleMetres = obstacleMetres;
      },
    };
  },
};

/** A timer that was set too short: the room never reaches the end that it first ran towards,
 * and both of its strokes are as short. */
const shortTimer: FaultKind = {
  name: 'short-timer',
  wants: { endings: ['timed'] },
  draw(plant, calendar, onset, random) {
    const missing = random.between(0.12, 0.28);
    const { index } = calendar.find((each) => each.index >= onset && !each.broken)!;
    const timerS = referenceStroke(plant).seconds * (1 - missing);
    const label = labelOf(index, { kind: 'short-travel', severity: missing });
    return {
      name: 'short-timer',
      label,
      startsStroke: index,
      services: [],
      apply(condition) {
        condition.timerS = timerS;
      },
    };
  },
};

export const SHORT_TRAVEL = [obstacle, shortTimer];
