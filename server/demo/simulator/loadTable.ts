import type { StrokeCondition } from './condition.ts';
import type { SimulatedRoom } from './room.ts';

/** Fine enough for a tooth of 4 mm. */
const CELL_METRES = 0.0005;
const EDGE_METRES = 0.004;
/** A seal that lets go resists less than one that is pressed home. */
const SEAL_RELEASE = 0.4;

function textureAt(texture: readonly number[], position: number): number {
  const knot = position * (texture.length - 1);
  const below = Math.min(Math.floor(knot), texture.length - 2);
  return texture[below] + (texture[below + 1] - texture[below]) * (knot - below);
}

/** 0 to 1 and back over `EDGE_METRES` at both ends of a stretch. */
function within(position: number, from: number, to: number, travelMetres: number): number {
  const inside = Math.min(position - from, to - position) * travelMetres;
  return Math.min(Math.max(inside / EDGE_METRES + 0.5, 0), 1);
}

/**
 * The resistance that each side meets along the travel, newtons at the running speed and 20 °C, evenly spaced from
 * fully retracted to fully extended. Gravity, temperature and speed come on top while the stroke runs.
 */
export function loadTables(room: SimulatedRoom, condition: StrokeCondition): Float64Array[] {
  const { facts, load, motors } = room;
  const travel = facts.travelMetres;
  const cells = Math.ceil(travel / CELL_METRES) + 1;
  const extending = condition.direction === 'extend';
  const whole = load.forceN * condition.frictionFactor * (extending ? 1 : load.retractFactor);
  const tooth = (2 * Math.PI) / (facts.rackPitchMm / 1000);
  const turn = tooth / facts.gearTeeth;

  const tables = motors.map((motor, side) => {
    const table = new Float64Array(cells);
    const base = whole * (motor.loadShare + condition.shareShift[side]) * condition.sideFactors[side];
    for (let cell = 0; cell < cells; cell++) {
      const position = cell / (cells - 1);
      const metres = position * travel;
      const ripple =
        1 +
        motor.toothRipple * Math.sin(tooth * metres) +
        motor.turnRipple * Math.sin(turn * metres + motor.gearPhase);
      const toEnd = extending ? travel - metres : metres;
      const pressed = Math.max(1 - toEnd / load.sealMetres, 0);
      const released = Math.max(1 - (travel - toEnd) / load.sealMetres, 0);
      const seal = load.sealPart * (pressed * pressed + SEAL_RELEASE * released);
      table[cell] = base * (textureAt(motor.texture, position) * ripple + seal);
    }
    return table;
  });

  for (const drop of condition.drops) {
    const table = tables[drop.sideIndex];
    for (let cell = 0; cell < cells; cell++) {
      const weight = within(cell / (cells - 1), drop.from, drop.to, travel);
      const shed = table[cell] * (1 - drop.keeps) * weight;
      table[cell] -= shed;
      for (const other of tables)
        if (other !== table) other[cell] += (shed * drop.taken) / (tables.length - 1);
    }
  }

  for (const bump of condition.bumps) {
    const table = tables[bump.sideIndex];
    const half = bump.widthMetres / 2 / travel;
    const first = Math.max(Math.ceil((bump.position - half) * (cells - 1)), 0);
    const last = Math.min(Math.floor((bump.position + half) * (cells - 1)), cells - 1);
    const height = whole * motors[bump.sideIndex].loadShare * bump.part;
    for (let cell = first; cell <= last; cell++) {
      const off = (cell / (cells - 1) - bump.position) / half;
      table[cell] = Math.max(table[cell] + height * 0.5 * (1 + Math.cos(Math.PI * off)), 0);
    }
  }
  return tables;
}
