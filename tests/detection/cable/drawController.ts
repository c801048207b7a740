import type { Random } from '../../../server/demo/simulator/random.ts';
import type { RoomNeeds } from './drawRoom.ts';
import type { Controller } from './room.ts';

/** What a controller is chosen for. */
export interface Driven {
  readonly two: boolean;
  readonly runAmps: number;
  readonly stallAmps: number;
  readonly travelMetres: number;
  readonly seconds: number;
}

/** From a bare switch to one that keeps two sides in step. Common practice, no source. */
export function drawController(random: Random, driven: Driven, needs: RoomNeeds): Controller {
  const { two, runAmps, stallAmps, travelMetres, seconds } = driven;
  const bare = random.chance(0.35) || needs.loose === true;
  const plain = needs.plainController === true || bare;
  const limited = !plain && random.chance(0.15);
  // Between what a heavy stroke takes and what a stall on a tired battery still gives.
  const stopAmps = runAmps + (stallAmps - runAmps) * random.uniform(0.5, 0.65);
  return {
    softStartS: !plain && random.chance(0.5) ? random.uniform(0.3, 1.5) : 0,
    softStopMetres: !plain && random.chance(0.3) ? travelMetres * random.uniform(0.03, 0.08) : 0,
    stopAmps: bare ? null : stopAmps,
    stopAfterS: random.uniform(0.15, 0.5),
    limitAmps: limited ? stopAmps * random.uniform(1.02, 1.15) : null,
    limitSwitches: needs.wholeRecord !== true && random.chance(0.1),
    sync:
      two && !bare && needs.plainController !== true
        ? random.pick(['none', 'pulses', 'duty'] as const)
        : 'none',
    leadMetres: random.uniform(0.006, 0.02),
    breaker:
      random.chance(0.15) && needs.plainController !== true
        ? { holdAmps: Math.max(1.5 * runAmps, 0.4 * stallAmps), warmingS: Math.max(4, 0.4 * seconds) }
        : null,
  };
}
