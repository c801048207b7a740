import type { Random } from '../../../server/demo/simulator/random.ts';
import type { PlannedStroke } from './calendar.ts';
import { plainCondition, type StrokeCondition } from './condition.ts';
import type { Habits } from './habits.ts';
import type { Plant } from './plant.ts';

/** Strokes in which a new room runs in. */
const RUN_IN_STROKES = 14;
/** Days after which a seal sticks. */
const STICKS_DAYS = 40;
/** Of a battery's resistance for each kelvin below 20 °C. */
const BATTERY_PER_K = 0.012;

/** What nature, people and habit make of one stroke of a room without faults. */
export function conditionOf(
  plant: Plant,
  habits: Habits,
  planned: PlannedStroke,
  index: number,
  random: Random,
): StrokeCondition {
  const condition = plainCondition(plant);
  condition.ambientC = planned.ambientC;
  setFriction(condition, plant, habits, planned, index, random);
  setSupply(condition, plant, habits, planned, index, random);
  setPeople(condition, habits, planned, random);
  setLogger(condition, plant, habits, planned, index, random);
  return condition;
}

function setFriction(
  condition: StrokeCondition,
  plant: Plant,
  habits: Habits,
  { ambientC, isWet, laden, lean, tilt, restDays }: PlannedStroke,
  index: number,
  random: Random,
): void {
  const colder = Math.max(-15, Math.min(35, 20 - ambientC));
  const wave = Math.sin((2 * Math.PI * index) / habits.wanderStrokes);
  const done = habits.services.filter(({ beforeStroke }) => beforeStroke <= index);
  const rested = restDays > STICKS_DAYS ? habits.storagePart : 0;
  const friction =
    (1 + plant.coldPart * colder) *
    (1 + habits.newPart * Math.exp(-index / RUN_IN_STROKES)) *
    (1 + habits.wander * wave) *
    (1 + laden + rested) *
    Math.exp(random.normal(0, plant.scatter)) *
    done.reduce((factor, { frictionFactor }) => factor * frictionFactor, 1);
  const skew =
    plant.sides.length > 1 ? lean + habits.wander * 0.5 * wave + random.normal(0, plant.scatter * 0.5) : 0;
  const fresh = done.filter(({ freshMotor }) => freshMotor).length;
  condition.sides.forEach((side, i) => {
    side.frictionFactor = friction * (1 + (i === 0 ? skew : -skew));
    // Every motor of a maker is a little different.
    if (fresh > 0) side.windingFactor = 1 + 0.04 * Math.sin(7 * fresh + plant.strokeS);
  });
  const usual = plant.sides.reduce((sum, { newtons }) => sum + newtons, 0);
  condition.tiltNewtons = tilt * usual;
  condition.wiperFactor = isWet ? 1 + habits.wetPart : 1;
  condition.viscousFactor = Math.exp(plant.stiffPart * colder);
  condition.sealFactor = (1 + 0.006 * colder) * Math.exp(random.normal(0, 0.04));
  condition.stuck =
    (ambientC < -1 && random.chance(habits.icePart) ? random.uniform(0.2, 0.7) : 0) + rested * 3;
  if (random.chance(habits.gritPart)) addGrit(condition, plant, random);
  if (isWet && random.chance(habits.pondPart)) condition.topperFactor = random.uniform(1.2, 2);
}

/** A pebble on a rail, run over once. */
function addGrit(condition: StrokeCondition, plant: Plant, random: Random): void {
  const i = random.integer(0, plant.sides.length - 1);
  const newtons = plant.sides[i].newtons * random.uniform(0.2, 0.6);
  condition.sides[i].bumps.push({ position: random.uniform(0.1, 0.9), widthMetres: 0.01, newtons });
}

function setSupply(
  condition: StrokeCondition,
  plant: Plant,
  habits: Habits,
  { source, chargeVolts, ambientC }: PlannedStroke,
  index: number,
  random: Random,
): void {
  const { supply, facts } = plant;
  const scale = facts.nominalVolts / 12;
  const { newBattery } = habits;
  const isNew = newBattery !== null && index >= newBattery.fromStroke;
  const battery = supply.batteryVolts + chargeVolts * scale + (isNew ? newBattery.volts : 0);
  const cold = 1 + BATTERY_PER_K * Math.max(0, 20 - ambientC);
  const batteryOhms = supply.batteryOhms * cold * (isNew ? newBattery.ohmsPart : 1);
  const fed = source === 'shore' ? supply.shoreVolts : supply.engineVolts;
  condition.openVolts = source === 'battery' ? battery : fed + random.normal(0, 0.05) * scale;
  condition.supplyOhms = supply.feedOhms + (source === 'battery' ? batteryOhms : 0.5 * batteryOhms);
  const amps = plant.sides.reduce((sum, { runningAmps }) => sum + runningAmps, 0);
  if (random.chance(habits.otherUserPart)) {
    const fromS = random.uniform(0, plant.strokeS * 0.7);
    const other = Math.min(random.uniform(4, 20), amps);
    condition.others.push({ fromS, toS: fromS + random.uniform(1, 20), amps: other });
  }
  if (random.chance(habits.changeoverPart)) {
    const openVolts = source === 'battery' ? supply.shoreVolts : battery;
    condition.changeover = { atS: random.uniform(0.2, 0.8) * plant.strokeS, openVolts };
  }
}

function setPeople(
  condition: StrokeCondition,
  habits: Habits,
  { stopAt, isBroken, direction }: PlannedStroke,
  random: Random,
): void {
  condition.stopAt = stopAt;
  if (random.chance(habits.jogPart)) {
    condition.jog = { waitS: random.uniform(0.3, 1.4), lastS: random.uniform(0.25, 0.8) };
  }
  if (isBroken || !random.chance(habits.pausePart)) return;
  const places = Array.from({ length: random.integer(1, 2) }, () => random.uniform(0.15, 0.85)).sort(
    (a, b) => a - b,
  );
  if (direction === 'retract') places.reverse();
  condition.pauses = places.map((position) => ({ position, lastS: random.uniform(0.8, 5) }));
}

function setLogger(
  condition: StrokeCondition,
  plant: Plant,
  habits: Habits,
  { ambientC }: PlannedStroke,
  index: number,
  random: Random,
): void {
  const { logger } = plant;
  const shift = habits.rezeroes
    .filter(({ fromStroke }) => fromStroke <= index)
    .reduce((sum, { amps }) => sum + amps, logger.driftAmpsPerK * (ambientC - 20));
  for (const side of condition.sides) side.offsetAmps += shift;
  if (habits.newLogger !== null && index >= habits.newLogger.fromStroke) {
    condition.rateHz = Math.max(10, Math.min(200, habits.newLogger.rateHz));
    condition.resolutionAmps = habits.newLogger.resolutionAmps;
  }
  if (random.chance(habits.latePart)) condition.lateS = logger.beforeS + random.uniform(0.15, 0.9);
}
