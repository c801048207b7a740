import { drawRooms, type FleetName, type FleetRoom } from './fleets.ts';
import { scoreRoom } from './scoreFleet.ts';

/**
 * One process's part of a fleet: which one, seed, rooms, strokes, which of how many parts, and the faults to play (empty:
 * all rooms); scores go to the parent.
 */
const [fleet, ...words] = process.argv.slice(2);
const faults = words.pop()?.split(',').filter(Boolean) ?? [];
const [seed, rooms, strokes, part, parts] = words.map(Number);
const isAsked = ({ fault }: FleetRoom) => faults.length === 0 || faults.includes(fault?.name ?? 'healthy');
// Named by main.ts, which checked it.
const members = drawRooms(fleet as FleetName, seed, rooms, strokes).filter(isAsked);
for (const member of members.filter((_, place) => place % parts === part)) process.send?.(scoreRoom(member));
process.disconnect?.();
