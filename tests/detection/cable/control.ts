import type { Direction } from '../../../analysis/trace.ts';
import type { Condition } from './condition.ts';
import type { CableRoom } from './room.ts';
import { STEP_S } from './step.ts';

/** What a controller, or whoever holds the switch, sees of a side. */
export interface Seen {
  readonly motorMetres: number;
  readonly metres: number;
  readonly speed: number;
  readonly motorSpeed: number;
  readonly amps: number;
  readonly hasHold: boolean;
}

/** In the first of it a motor draws its inrush and nobody minds. */
const BLIND_S = 1;
const STILL_S = 0.8;
const SOFT_DUTY = 0.25;
const SLOW_DUTY = 0.55;

/** Decides step by step what part of the voltage each side gets; null: the stroke is over. */
export function beginControl(room: CableRoom, direction: Direction, condition: Condition) {
  const { controller, travelMetres } = room;
  const progress = (part: number) => (direction === 'extend' ? part : 1 - part) * travelMetres;
  const targetMetres = progress(condition.to);
  const isWhole = targetMetres >= travelMetres - 1e-9;
  const startMetres = progress(condition.from);
  const pauses = [...condition.pauses];
  const cut = room.sides.map(() => false);
  const overS = room.sides.map(() => 0);
  const stillS = room.sides.map(() => 0);
  const waits = room.sides.map(() => false);
  let restUntilS = 0;
  let fedSinceS = 0;

  return {
    dutiesAt(nowS: number, sides: readonly Seen[]): number[] | null {
      if (condition.givesUpS !== null && nowS > condition.givesUpS) return null;
      if (nowS < restUntilS) return sides.map(() => 0);
      const foremost = Math.max(...sides.map(({ metres }) => metres));
      if (!isWhole && foremost >= targetMetres) return null;
      if (pauses.length > 0 && foremost > startMetres + pauses[0].at * (targetMetres - startMetres)) {
        restUntilS = nowS + pauses[0].offS;
        fedSinceS = restUntilS;
        pauses.shift();
        return sides.map(() => 0);
      }
      const fedS = nowS - fedSinceS;
      for (const [at, side] of sides.entries()) watch(at, side, fedS);
      if (cut.every(Boolean)) return null;
      if (controller.stopAmps === null && stillS.every((seconds) => seconds > condition.holdS)) return null;
      return sides.map((side, at) => dutyOf(at, side, sides[1 - at], fedS));
    },
  };

  function watch(at: number, { metres, speed, motorSpeed, amps, hasHold }: Seen, fedS: number): void {
    const counts = controller.stopAmps !== null && !cut.some(Boolean);
    // A counter on the motor sees the slack being taken up; an eye on the room waits for it.
    const hums = !hasHold && room.sides.length === 1;
    const isStill = !hums && Math.max(speed, counts ? motorSpeed : 0) < 0.04 * room.speed;
    stillS[at] = isStill && fedS > (counts ? 0.5 : 3) ? stillS[at] + STEP_S : 0;
    if (controller.limitSwitches && metres > travelMetres - 0.004) cut[at] = true;
    if (controller.stopAmps === null || fedS < Math.max(BLIND_S, 1.2 * controller.softStartS)) return;
    overS[at] = amps > controller.stopAmps ? overS[at] + STEP_S : 0;
    if (overS[at] > controller.stopAfterS || stillS[at] > STILL_S) cut[at] = true;
  }

  function dutyOf(at: number, side: Seen, other: Seen | undefined, fedS: number): number {
    if (cut[at]) return 0;
    const { softStartS, softStopMetres, sync, leadMetres } = controller;
    let duty = softStartS > 0 ? Math.min(1, SOFT_DUTY + ((1 - SOFT_DUTY) * fedS) / softStartS) : 1;
    if (softStopMetres > 0 && travelMetres - side.metres < softStopMetres) duty = Math.min(duty, SLOW_DUTY);
    if (other === undefined || sync === 'none') return duty;
    const lead = side.metres - other.metres;
    if (sync === 'duty') return duty * (1 - Math.max(0, Math.min(0.5, (0.4 * lead) / leadMetres)));
    if (lead > leadMetres) waits[at] = true;
    else if (lead < 0.3 * leadMetres) waits[at] = false;
    return waits[at] ? 0 : duty;
  }
}
