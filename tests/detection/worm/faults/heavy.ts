import { planFault, type Recipe } from '../fault.ts';

/** A room that its racks carry instead of only guiding it, as it was delivered. */
export const racksCarry: Recipe = {
  name: 'racks carry',
  needs: (random) => ({
    heavy: { factor: random.uniform(2.4, 4), side: random.chance(0.5) ? 'all' : random.pick([0, 1]) },
  }),
  draw({ room }) {
    const rated = room.facts.ratedAmps ?? 0;
    const over = room.sides.map(({ runAmps }) => runAmps / rated);
    const heavy = room.sides.filter((_, at) => over[at] > 1.3);
    const both = heavy.length === 2;
    return planFault(
      this.name,
      0,
      {
        kind: 'heavy-room',
        side: both ? null : heavy[0].name,
        severity: Math.max(...over),
      },
      () => {},
    );
  },
};
