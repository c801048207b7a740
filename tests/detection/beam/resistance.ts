import type { Condition } from './condition.ts';
import type { Plant } from './plant.ts';
import type { Random } from './random.ts';

/** Points along the travel of a stroke's tables. */
export const POINTS = 2048;

/** What an edge meets along the travel: friction, and forces that push whichever way it runs. Newtons. */
export interface Resistance {
  readonly friction: Float64Array;
  /** Positive: outwards. */
  readonly push: Float64Array;
  /** Newtons for each metre a second. */
  readonly viscous: number;
}

const GRAVITY = 9.81;
/** Part of the friction that grows with the weight carried. */
const WEIGHT_PART = 0.6;
/** Part of the travel over which a stuck seal or grease lets go. */
const LETTING_GO = 0.12;

/** One edge's tables for a stroke. */
export function resistanceOf(plant: Plant, condition: Condition, edge: 0 | 1, random: Random): Resistance {
  const own = plant.edges[edge];
  const state = condition.edges[edge];
  const cold = 20 - condition.ambientC;
  const weight =
    1 + WEIGHT_PART * (condition.massFactor - 1) + WEIGHT_PART * (edge === 0 ? 1 : -1) * condition.lean;
  const level = own.coulombNewtons * state.coulomb * weight * (1 + plant.coulombPerC * cold);
  const friction = new Float64Array(POINTS + 1);
  const push = new Float64Array(POINTS + 1);
  const waves = own.waves.map(({ amplitude, phase }, at) => ({ amplitude, phase, turns: 0.7 + at * 1.6 }));
  for (const turns of [2.3, 5.9, 11.7]) {
    waves.push({ amplitude: state.texture * random.normal(), phase: random.between(0, 2 * Math.PI), turns });
  }
  const gravity = (plant.massKg * condition.massFactor * GRAVITY * Math.sin(condition.slope)) / 2;
  const { seals, ramp, travelMetres } = plant;
  for (let point = 0; point <= POINTS; point++) {
    const part = point / POINTS;
    const metres = part * travelMetres;
    let factor = 1;
    for (const { amplitude, phase, turns } of waves) {
      factor += amplitude * Math.sin(2 * Math.PI * turns * part + phase);
    }
    if (state.stuck > 0) {
      const gone = condition.direction === 'extend' ? part : 1 - part;
      factor += state.stuck * Math.exp(-gone / LETTING_GO);
    }
    friction[point] = level * factor;
    const inner = Math.max(0, 1 - metres / seals.metres);
    const outer = Math.max(0, 1 - (travelMetres - metres) / seals.metres);
    const climb = ramp.newtons * rampShape((travelMetres - metres) / ramp.metres);
    push[point] = gravity + seals.newtons * (inner - outer) + climb;
  }
  for (const bump of state.bumps) addBump(friction, bump, travelMetres);
  return {
    friction,
    push,
    viscous: own.viscousNewtonSeconds * state.viscous * Math.exp(plant.greasePerC * cold),
  };
}

/** 1 on the ramp, with soft edges. */
function rampShape(along: number): number {
  if (along < 0.1 || along > 1.2) return 0;
  if (along < 0.3) return (along - 0.1) / 0.2;
  return along < 1 ? 1 : (1.2 - along) / 0.2;
}

function addBump(
  friction: Float64Array,
  { centreMetres, widthMetres, newtons }: { centreMetres: number; widthMetres: number; newtons: number },
  travelMetres: number,
): void {
  const first = Math.max(0, Math.floor(((centreMetres - widthMetres / 2) / travelMetres) * POINTS));
  const last = Math.min(POINTS, Math.ceil(((centreMetres + widthMetres / 2) / travelMetres) * POINTS));
  for (let point = first; point <= last; point++) {
    const along = ((point / POINTS) * travelMetres - centreMetres) / widthMetres;
    if (Math.abs(along) < 0.5) friction[point] += newtons * Math.cos(Math.PI * along) ** 2;
  }
}
