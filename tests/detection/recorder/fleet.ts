import { drawRoom } from './drawRoom.ts';
import type { RecorderFault } from './faults/fault.ts';
import { FAULT_KINDS } from './faults/faultKinds.ts';
import { drawNuisances, type Nuisance } from './nuisances.ts';
import { Random } from './random.ts';
import type { RecorderRoom } from './room.ts';

/** One room of the fleet with all that will happen to it. */
export interface RecorderMember {
  readonly seed: number;
  readonly room: RecorderRoom;
  readonly fault: RecorderFault | null;
  readonly nuisances: readonly Nuisance[];
  readonly strokes: number;
}

/** Draws a fleet: every second room stays healthy, the others bear each kind of fault in turn where it fits. */
export function drawRecorderFleet(seed: number, count: number, strokes: number): RecorderMember[] {
  const fleet = new Random(seed).branch('recorder');
  const turn = fleet.whole(0, FAULT_KINDS.length - 1);
  return Array.from({ length: count }, (_, place) => {
    const own = Math.floor(fleet.part() * 2 ** 31);
    return drawMember(own, place % 2 === 1 ? turn + (place - 1) / 2 : null, strokes);
  });
}

function drawMember(seed: number, turn: number | null, strokes: number): RecorderMember {
  const random = new Random(seed);
  const kind = turn === null ? null : FAULT_KINDS[turn % FAULT_KINDS.length];
  let room = drawRoom(random.branch('room 0'));
  for (let draw = 1; kind !== null && !kind.fits(room); draw++)
    room = drawRoom(random.branch(`room ${draw}`));
  const choice = random.branch('fault');
  const fault = kind === null ? null : kind.draw(room, choice.whole(40, 150), choice);
  return {
    seed,
    room: fault?.room ?? room,
    fault,
    nuisances: drawNuisances(fault?.room ?? room, strokes, fault === null, random.branch('nuisances')),
    strokes,
  };
}
