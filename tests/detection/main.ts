import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { drawRooms, FLEET_NAMES, type FleetName } from './fleets.ts';
import { printScores } from './printScores.ts';
import type { RoomScore } from './scoreFleet.ts';
import { tellStory } from './tellStory.ts';

const { values } = parseArgs({
  options: {
    rooms: { type: 'string', default: '200' },
    strokes: { type: 'string', default: '240' },
    seeds: { type: 'string', default: '2026' },
    fleet: { type: 'string', default: FLEET_NAMES.join(',') },
    faults: { type: 'string', default: '' },
    room: { type: 'string' },
  },
});

/**
 * Plays seeded fleets, half of the rooms faulty, on all cores and prints for each how the faults were found, the missed
 * ones by seed, the false warnings, and how many healthy strokes lay beyond the single-stroke limits. `--faults a,b`
 * plays the rooms with these faults alone (`healthy`: with none); `--room N` tells what was said of the one room with that seed.
 */
async function main(): Promise<void> {
  for (const name of values.fleet.split(',')) {
    const fleet = FLEET_NAMES.find((known) => known === name);
    if (fleet === undefined) throw new Error(`There is no fleet ${name}.`);
    for (const seed of values.seeds.split(',')) {
      console.log(`\nfleet ${fleet}, seed ${seed}, ${values.rooms} rooms of ${values.strokes} strokes`);
      if (values.room === undefined) await playSeed(fleet, seed);
      else tellRoom(fleet, seed, values.room);
    }
  }
}

async function playSeed(fleet: FleetName, seed: string): Promise<void> {
  const parts = Math.max(1, availableParallelism());
  const scores = (
    await Promise.all(Array.from({ length: parts }, (_, part) => playPart(fleet, seed, part, parts)))
  ).flat();
  const seen = scores.filter((score) => score !== null);
  if (seen.length === 0) throw new Error(`No room of the fleet ${fleet} bears one of ${values.faults}.`);
  printScores(seen);
  const unseen = scores.length - seen.length;
  if (unseen > 0) console.log(`${unseen} rooms with a weak supply that nobody recorded are left out.`);
}

function tellRoom(fleet: FleetName, seed: string, room: string): void {
  const members = drawRooms(fleet, Number(seed), Number(values.rooms), Number(values.strokes));
  const member = members.find((each) => each.seed === Number(room));
  if (member === undefined) throw new Error(`There is no room ${room} among these.`);
  tellStory(member);
}

function playPart(
  fleet: FleetName,
  seed: string,
  part: number,
  parts: number,
): Promise<(RoomScore | null)[]> {
  return new Promise((resolve, reject) => {
    const words = [fleet, seed, values.rooms, values.strokes, String(part), String(parts), values.faults];
    const child = fork(new URL('./worker.ts', import.meta.url), words, { execArgv: ['--import', 'tsx'] });
    const scores: (RoomScore | null)[] = [];
    // Sent by worker.ts, which sends nothing else.
    child.on('message', (score) => scores.push(score as RoomScore | null));
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve(scores) : reject(new Error(`part ${part} ended with ${code}`)),
    );
  });
}

await main();
