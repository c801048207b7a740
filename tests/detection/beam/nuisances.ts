import type { PlannedStroke } from './calendar.ts';
import type { Condition } from './condition.ts';
import type { Plant } from './plant.ts';
import { Random } from './random.ts';
import type { PlannedService } from './story.ts';
import type { Weather } from './weather.ts';

/** What real life brings to every room, faulty or not. Drawn once for each room. */
export interface Nuisances {
  readonly services: readonly PlannedService[];
  readonly apply: (condition: Condition, planned: PlannedStroke) => void;
}

/** `settlesUntil`: new levels are set by services before this stroke only. */
export function drawNuisances(
  plant: Plant,
  seed: number,
  strokes: number,
  weather: Weather,
  settlesUntil: number,
): Nuisances {
  const random = Random.of(seed, 41);
  const level = drawLevel(random, plant, strokes, settlesUntil);
  const fleeting = drawFleeting(random, seed, plant, strokes);
  const camps = drawCamps(random, seed);
  const spread = { common: random.between(0.008, 0.02), own: random.between(0.004, 0.012) };
  const slow = slowWander(Random.of(seed, 43), strokes);
  const texture = random.between(0.005, 0.02);
  return {
    services: level.services,
    apply(condition, planned) {
      const own = Random.of(seed, 50_000 + planned.index);
      condition.ambientC = weather.at(planned);
      camps(condition, planned);
      const common = 1 + spread.common * own.normal() + slow[planned.index];
      for (const edge of condition.edges) {
        edge.coulomb *= common * (1 + spread.own * own.normal());
        edge.texture = texture;
        if (planned.restDays > 60) edge.stuck = own.between(0.3, 0.9);
      }
      if (planned.restDays > 60) for (const edge of condition.edges) edge.coulomb *= 1.06;
      level.apply(condition, planned.index);
      fleeting(condition, planned, own);
    },
  };
}

/** An unhurried wander of the friction, about ±0.8 %. */
function slowWander(random: Random, strokes: number): number[] {
  const keeps = 0.95;
  const wander: number[] = [];
  let state = 0;
  for (let index = 0; index < strokes; index++) {
    state = keeps * state + 0.007 * Math.sqrt(1 - keeps * keeps) * random.normal();
    wander.push(state);
  }
  return wander;
}

/** Each place's slope, supply and load. */
function drawCamps(random: Random, seed: number): (condition: Condition, planned: PlannedStroke) => void {
  const shore = random.between(0.2, 0.7);
  const engine = random.between(0, 0.9 - shore);
  const slopes = random.between(0.001, 0.009);
  const weakCamps = random.chance(0.4) ? 0.08 : 0;
  return (condition, { camp, direction }) => {
    const place = Random.of(seed, 60_000 + camp);
    condition.slope = slopes * place.normal();
    condition.lean = 0.02 * place.normal();
    condition.massFactor = 1 + 0.025 * place.normal();
    const roll = place.unit();
    const { source } = condition;
    const weak = place.chance(weakCamps);
    source.restVolts = weak ? place.between(11.95, 12.2) : place.between(12.4, 12.85);
    if (weak) return;
    if (roll < shore) source.chargerVolts = place.between(13.2, 13.7);
    // The engine runs on arrival, seldom before leaving.
    else if (roll < shore + engine && (direction === 'extend' || place.chance(0.3))) {
      source.chargerVolts = place.between(13.8, 14.3);
    }
  };
}

/** Services that change nothing, and those that set a new level for good. */
function drawLevel(random: Random, plant: Plant, strokes: number, settlesUntil: number) {
  const services: PlannedService[] = [];
  const changes: { from: number; apply: (condition: Condition) => void }[] = [];
  const sides = plant.facts.sides;
  if (random.chance(0.35)) {
    const kind = random.pick(['cleaned', 'adjusted', 'other'] as const);
    services.push({ beforeStroke: random.whole(30, strokes - 30), kind, side: null });
  }
  const at = random.whole(30, Math.min(150, strokes - 40));
  if (random.chance(0.3) && at < settlesUntil) {
    const kind = random.pick(['lubricated', 'lubricated', 'cleaned', 'motor-replaced', 'adjusted'] as const);
    const motor = random.whole(0, sides.length - 1);
    services.push({ beforeStroke: at, kind, side: kind === 'motor-replaced' ? sides[motor] : null });
    const easier = random.between(0.8, 0.95);
    // A motor of the same type.
    const emf = random.between(0.975, 1.025);
    const ohm = random.between(0.95, 1.05);
    const shift = random.between(-0.08, 0.08);
    changes.push({
      from: at,
      apply(condition) {
        if (kind === 'motor-replaced') {
          condition.motors[motor].emfFactor *= emf;
          condition.motors[motor].windingFactor *= ohm;
        } else if (kind === 'adjusted') {
          condition.edges[0].coulomb *= 1 + shift;
          condition.edges[1].coulomb *= 1 - shift;
        } else for (const edge of condition.edges) edge.coulomb *= easier;
      },
    });
  }
  const apply = (condition: Condition, index: number) => {
    for (const change of changes) if (index >= change.from) change.apply(condition);
  };
  return { services, apply };
}

/** What touches the record or a single stroke only. */
function drawFleeting(random: Random, seed: number, plant: Plant, strokes: number) {
  const rezeroes = random.chance(0.4) ? random.whole(1, 3) : 0;
  const zeros = Array.from({ length: rezeroes }, (_, at) => ({
    from: random.whole(10, strokes - 10),
    salt: at,
  }));
  const newRate = random.chance(0.2)
    ? {
        from: random.whole(30, strokes - 30),
        rateHz: plant.logger.rateHz * (plant.logger.rateHz > 60 ? 0.5 : random.pick([1, 2])),
      }
    : null;
  const release = random.between(0.4, 1.2);
  const jogs = random.chance(0.3) ? 0.1 : 0;
  const pauses = random.chance(0.5) ? 0.03 : 0;
  const misses = random.chance(0.3) ? 0.05 : 0;
  const lates = random.chance(0.3) ? 0.03 : 0;
  return (condition: Condition, planned: PlannedStroke, own: Random) => {
    const { logger, user } = condition;
    user.releaseS = release * own.between(0.7, 1.3);
    user.stopsAtPart = planned.stopsAtPart;
    if (own.chance(jogs))
      Object.assign(user, { jogS: own.between(0.3, 1.2), jogAfterS: own.between(0.4, 2) });
    if (own.chance(pauses) && !planned.broken) {
      const times = own.chance(0.2) ? 2 : 1;
      user.pauses = Array.from({ length: times }, () => ({
        atPart: own.between(0.15, 0.85),
        seconds: own.between(0.8, 5),
      })).sort((a, b) => a.atPart - b.atPart);
    }
    logger.beforeS = own.chance(0.03) ? own.between(1.5, 4) : own.between(0.2, 0.6);
    logger.afterS = own.between(0.3, 1);
    if (own.chance(lates)) logger.beforeS = -own.between(0.05, 0.4);
    if (newRate !== null && planned.index >= newRate.from) logger.rateHz = newRate.rateHz;
    for (const { from, salt } of zeros) {
      if (planned.index < from) continue;
      const zero = Random.of(seed, 70_000 + salt);
      for (const clamp of logger.clamps) clamp.offsetAmps = 0.15 * zero.normal();
    }
    for (const clamp of logger.clamps) clamp.offsetAmps += 0.01 * own.normal();
    if (own.chance(misses)) {
      for (const clamp of logger.clamps) clamp.lostPart = own.between(0.005, 0.04);
    }
    if (logger.clamps.length === 2 && own.chance(0.004)) logger.clamps[own.whole(0, 1)].missing = true;
  };
}
