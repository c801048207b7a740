import { expect, test } from 'vitest';
import { drawRooms, FLEET_NAMES } from '../../detection/fleets.ts';

test.each(FLEET_NAMES)('%s: a room is played in the order in which it happened', (fleet) => {
  for (const member of drawRooms(fleet, 5, 6, 60)) {
    const times = [...member.events()].map((event) =>
      event.type === 'stroke' ? Date.parse(event.stroke.startedAt) : event.atMs,
    );
    expect(times.length).toBeGreaterThan(20);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  }
});
