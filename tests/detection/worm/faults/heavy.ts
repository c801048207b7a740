import { MOST_GUIDING_AMPS, type RoomNeeds } from '../drawRoom.ts';
import { planFault, type Recipe } from '../fault.ts';

/** A room that its racks carry instead of only guiding it, as it was delivered. */
export const racksCarry: Recipe = {
  name: 'racks carry',
  needs(random): RoomNeeds {
    const rated = random.chance(0.75);
    const side = random.pick(['all', 'all', 0, 1] as const);
    const heavy = { over: random.uniform(1.6, 2.6), side, rated };
    // What a drive should need without anybody's rating is known of racks that only guide.
    return rated ? { heavy } : { heavy, geared: true, sides: 2 };
  },
  draw({ room }) {
    const over = room.sides.map(({ runAmps }) => runAmps / (room.facts.ratedAmps ?? MOST_GUIDING_AMPS));
    const heavy = room.sides.filter((_, at) => over[at] > 1.5);
    return planFault(
      this.name,
      0,
      {
        kind: 'heavy-room',
        side: room.sides.length === 2 && heavy.length === 2 ? null : heavy[0].name,
        severity: Math.max(...over),
      },
      () => {},
    );
  },
};
