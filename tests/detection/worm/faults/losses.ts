import { drawSideAt, eachOf, nameOf, planFault, type Recipe } from '../fault.ts';

/** A side whose drive no longer holds its rack: it idles, and the frame hangs on the other. */
export const sideLost: Recipe = {
  name: 'side lost',
  needs: () => ({ sides: 2 }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const left = random.uniform(0, 0.12);
    const loose = random.chance(0.4);
    const taken = random.uniform(0.3, 0.75);
    return planFault(
      this.name,
      onset,
      {
        kind: 'dropped-load',
        side: nameOf(room, at),
        severity: 1 - left,
        // The other side does work harder, and its draw does rise.
        alsoFits: ['uneven-sides', 'rising-draw'],
      },
      (condition) =>
        condition.sides.forEach((side, index) => {
          if (index === at) {
            side.lost.push({ from: 0, to: 1, left });
            side.loose = loose;
          } else
            side.rubbing *=
              1 + (taken * (1 - left) * room.sides[at].runNewtons) / room.sides[index].runNewtons;
        }),
    );
  },
};

/** A worn stretch of rack on which the gear hardly bites. */
export const stretchLost: Recipe = {
  name: 'stretch lost',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const at = drawSideAt(room, random, 0) ?? 0;
    const width = random.uniform(0.15, 0.4);
    const from = random.uniform(0.1, 0.88 - width);
    const left = random.uniform(0, 0.15);
    return planFault(
      this.name,
      onset,
      {
        kind: 'dropped-load',
        side: nameOf(room, at),
        severity: 1 - left,
        alsoFits: room.sides.length === 2 ? ['uneven-sides'] : [],
      },
      (condition) => eachOf(condition, at, ({ lost }) => lost.push({ from, to: from + width, left })),
    );
  },
};
