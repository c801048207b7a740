import { drawFleet } from '../../server/demo/simulator/drawFleet.ts';
import { scoreRoom } from './scoreFleet.ts';

/** One process's part of a fleet: seed, rooms, strokes, which of how many parts; scores go to the parent. */
const [seed, rooms, strokes, part, parts] = process.argv.slice(2).map(Number);
const members = drawFleet(seed, rooms, { strokes }).filter((_, place) => place % parts === part);
for (const member of members) process.send?.(scoreRoom(member));
process.disconnect?.();
