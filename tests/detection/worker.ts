import { drawRooms, type FleetName } from './fleets.ts';
import { scoreRoom } from './scoreFleet.ts';

/** One process's part of a fleet: which one, seed, rooms, strokes, which of how many parts; scores go to the parent. */
const [fleet, ...words] = process.argv.slice(2);
const [seed, rooms, strokes, part, parts] = words.map(Number);
// Named by main.ts, which checked it.
const members = drawRooms(fleet as FleetName, seed, rooms, strokes);
for (const member of members.filter((_, place) => place % parts === part)) process.send?.(scoreRoom(member));
process.disconnect?.();
