import type { Direction } from '../../../../analysis/trace.ts';
import type { Random } from '../../../../server/demo/simulator/random.ts';
import type { Bump } from '../condition.ts';
import { bearableRise, drawSideAt, eachOf, nameOf, planFault, pushFor, type Recipe } from '../fault.ts';
import type { Side, WormRoom } from '../room.ts';

/** Half the way over which something small resists: its own size, or the least that the logger's rate can show. */
function drawHalfWidth(
  { logger, travelMetres, strokeS, facts }: WormRoom,
  side: number,
  random: Random,
): number {
  const samplesS = 2.5 / logger.rateHz[facts.sides.length === 1 ? 0 : side];
  return Math.max(random.uniform(0.004, 0.01) / travelMetres, samplesS / strokeS, 0.15 / strokeS);
}

/** A peak's height: plain above noise and the course's own waves, and short of a stall, at which the room would stay. */
function drawPeak(
  room: WormRoom,
  side: Side,
  random: Random,
): { readonly rise: number; readonly part: number } {
  const least = Math.max(0.4, (6 * room.logger.noiseAmps) / side.runAmps);
  const most = Math.min(2.5, 0.8 * bearableRise(side, room.facts.nominalVolts));
  const rise = least < most ? random.logUniform(least, most) : most;
  return { rise, part: pushFor(side, rise) };
}

/** A fastener that stands out and is met at its place, mostly on both ways. */
export const proudFastener: Recipe = {
  name: 'proud fastener',
  needs: () => ({}),
  draw({ room, life, onset, random }) {
    const at = drawSideAt(room, random, 0) ?? 0;
    const { rise, part } = drawPeak(room, room.sides[at], random);
    const bump: Bump = {
      position: random.uniform(0.14, 0.82),
      halfWidth: drawHalfWidth(room, at, random),
      part,
    };
    const only: Direction | null = random.chance(0.2) ? random.pick(['extend', 'retract']) : null;
    const first = life.findIndex(
      ({ direction }, index) => index >= onset && (only === null || direction === only),
    );
    return planFault(
      this.name,
      first,
      {
        kind: 'stall-spike',
        side: nameOf(room, at),
        position: bump.position,
        pattern: 'same-place',
        severity: rise,
      },
      (condition, _, { direction }) => {
        if (only === null || direction === only) eachOf(condition, at, ({ bumps }) => bumps.push(bump));
      },
    );
  },
};

/** A tooth that broke off: the drive falls into its gap and climbs out, once a turn of the gear. */
export const brokenTooth: Recipe = {
  name: 'broken tooth',
  needs: () => ({ geared: true, sides: 2 }),
  draw({ room, onset, random }) {
    const at = random.integer(0, 1);
    const { rise, part } = drawPeak(room, room.sides[at], random);
    const turn = (room.gearTeeth * room.toothMetres) / room.travelMetres;
    const halfWidth = Math.min(drawHalfWidth(room, at, random), turn / 5);
    const bumps: Bump[] = [];
    for (let position = random.uniform(0, turn); position < 1; position += turn) {
      bumps.push({ position, halfWidth, part });
      bumps.push({ position: position - 1.5 * halfWidth, halfWidth: halfWidth / 2, part: -0.4 });
    }
    return planFault(
      this.name,
      onset,
      { kind: 'stall-spike', side: nameOf(room, at), pattern: 'once-per-turn', severity: rise },
      (condition) => eachOf(condition, at, (side) => side.bumps.push(...bumps)),
    );
  },
};

/** A gear that meshes badly now here, now there. */
export const badMesh: Recipe = {
  name: 'bad mesh',
  needs: () => ({}),
  draw({ room, onset, random }) {
    const at = drawSideAt(room, random, 0) ?? 0;
    const { rise, part } = drawPeak(room, room.sides[at], random);
    const halfWidth = drawHalfWidth(room, at, random);
    const most = random.integer(2, 6);
    return planFault(
      this.name,
      onset,
      { kind: 'stall-spike', side: nameOf(room, at), pattern: 'scattered', severity: rise },
      (condition, index, _, chance) =>
        eachOf(condition, at, ({ bumps }) => {
          const count = index === onset ? most : chance.integer(1, most);
          for (let peak = 0; peak < count; peak++) {
            bumps.push({
              position: chance.uniform(0.1, 0.9),
              halfWidth,
              part: part * chance.uniform(0.75, 1.1),
            });
          }
        }),
    );
  },
};
