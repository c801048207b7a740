import { expect, test } from 'vitest';
import { drawRooms, FLEET_NAMES } from '../../detection/fleets.ts';

test.each(FLEET_NAMES)('%s: a room is played in the order in which it happened, work on it too', (fleet) => {
  let works = 0;
  let played = 0;
  for (const member of drawRooms(fleet, 9, 6, 60)) {
    // Work comes now and then: two rooms or more, until it has been among them.
    if (played >= 2 && works > 0) break;
    played++;
    const times: number[] = [];
    for (const event of member.events()) {
      if (event.type === 'service') works++;
      times.push(event.type === 'stroke' ? Date.parse(event.stroke.startedAt) : event.atMs);
    }
    expect(times.length).toBeGreaterThan(20);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  }
  expect(works).toBeGreaterThan(0);
});
