import { fillLoadTable } from './loadTable.ts';
import { paceSides } from './paceSides.ts';
import type { WindingRoom } from './room.ts';
import { Side } from './side.ts';
import type { StrokeState } from './strokeState.ts';
import { STEP_S, type Tape } from './tape.ts';

// Kept here for speed: an import is looked up anew in each step.
const STEP = STEP_S;
/** A current limit looks away while the motors start. */
const BLIND_S = 0.6;
const SEEN_METRES_PER_SECOND = 1e-3;
/** So long nothing moves before the hand believes it. */
const STANDSTILL_S = 0.3;

/** Solves one stroke in time, from the pressing of the switch until it is released, and writes it on the tape. */
export function driveStroke(
  room: WindingRoom,
  state: StrokeState,
  windingC: ArrayLike<number>,
  tape: Tape,
): Tape {
  const sides = room.motors.map((_, index) => {
    fillLoadTable(tape.tables[index], room, state, index);
    return new Side(room, state, tape.tables[index], index, windingC[index]);
  });
  const hand = new Hand(room, state);
  const { controller } = room;
  let step = 0;
  for (; step < tape.longestSteps; step++) {
    const seconds = step * STEP;
    const isPressed = hand.presses(seconds, sides);
    if (hand.hasLetGo && allRest(sides)) break;
    const soft =
      controller.softStartS > 0 ? Math.min(1, 0.35 + (0.65 * hand.pressedS) / controller.softStartS) : 1;
    paceSides(sides, controller, isPressed ? soft : 0);
    const volts = busVolts(state, sides);
    const racking = rackingNewtons(room, sides);
    const lost = lostNewtons(sides);
    for (let index = 0; index < sides.length; index++) {
      const side = sides[index];
      const pull = index === 0 ? racking : -racking;
      side.step(volts, side.isFree ? 0 : pull + lost, state.ambientC);
      cutAtEnd(side, room, state, hand.pressedS);
      tape.motorAmps[index][step] = side.amps;
      tape.feedAmps[index][step] = side.amps * side.duty;
      tape.positions[index][step] = side.position;
    }
    tape.volts[step] = volts;
    dragAlong(sides);
  }
  tape.steps = step;
  sides.forEach((side, index) => {
    tape.endPosition[index] = Math.min(1, Math.max(0, side.position));
    tape.endWindingC[index] = side.windingC;
  });
  return tape;
}

function allRest(sides: readonly Side[]): boolean {
  for (const side of sides) if (!side.rests) return false;
  return true;
}

/** Whether somebody who watches the room sees it move. */
function anyMoves(sides: readonly Side[]): boolean {
  for (const side of sides) {
    if (!side.isCut && !side.isFree && side.metresPerSecond > SEEN_METRES_PER_SECOND) return true;
  }
  return false;
}

/** Solved together with the motors' currents, which fall as it falls; the motors' speeds are those of the step before. */
function busVolts({ supply }: StrokeState, sides: readonly Side[]): number {
  const { sourceVolts, sourceOhms, sourceLimitAmps, batteryVolts, batteryOhms, cableOhms } = supply;
  let siemens = 0;
  let generatedAmps = 0;
  for (const side of sides) {
    siemens += side.duty * side.duty * side.siemens;
    generatedAmps += side.duty * side.siemens * side.generatedVolts;
  }
  const volts = voltsBehind(sourceVolts, sourceOhms + cableOhms, siemens, generatedAmps);
  if (siemens * volts - generatedAmps <= sourceLimitAmps) return volts;
  const batterySide = batteryVolts + batteryOhms * sourceLimitAmps;
  return Math.min(volts, voltsBehind(batterySide, batteryOhms + cableOhms, siemens, generatedAmps));
}

function voltsBehind(restVolts: number, ohms: number, siemens: number, generatedAmps: number): number {
  return (restVolts + ohms * generatedAmps) / (1 + ohms * siemens);
}

/** What the frame of a racked room pulls at the first side; the second feels the opposite. */
function rackingNewtons(room: WindingRoom, sides: readonly Side[]): number {
  if (sides.length < 2 || sides[0].isFree || sides[1].isFree) return 0;
  const lead = sides[0].metres - sides[1].metres;
  const beyond = Math.abs(lead) - room.rackingPlayMetres;
  if (beyond <= 0) return 0;
  return Math.sign(lead) * Math.min(room.rackingLimitNewtons, beyond * room.rackingNewtonsPerMetre);
}

/** A side whose gear turns free is dragged along by the other, which then carries most of its load. */
const DRAGGED_PART = 0.8;

function lostNewtons(sides: readonly Side[]): number {
  return sides.length < 2 ? 0 : DRAGGED_PART * Math.max(sides[0].lostNewtons, sides[1].lostNewtons);
}

function dragAlong(sides: readonly Side[]): void {
  if (sides.length < 2) return;
  if (sides[0].isFree) sides[0].follow(sides[1]);
  else if (sides[1].isFree) sides[1].follow(sides[0]);
}

/** The controller's own ends: a current limit that trips, or limit switches before the stop. */
function cutAtEnd(side: Side, room: WindingRoom, state: StrokeState, pressedS: number): void {
  const { ending, limitAmps, limitS } = room.controller;
  if (ending === 'hand' || side.isCut) return;
  if (ending === 'limit-switch') {
    const along = state.direction === 'extend' ? side.position : 1 - side.position;
    side.isCut = along >= state.limitSwitchPart;
    return;
  }
  side.overLimitS = side.amps > limitAmps && pressedS > BLIND_S ? side.overLimitS + STEP : 0;
  side.isCut = side.overLimitS > limitS;
}

/** The hand on the switch: holds on until nothing moves, lets go for a pause or for good where the stroke says so. */
class Hand {
  hasLetGo = false;
  pressedS = 0;
  readonly #state: StrokeState;
  readonly #patienceS: number;
  readonly #startPosition: number;
  #pauseUntilS = 0;
  #hasPaused = false;
  #stillS = 0;

  constructor(room: WindingRoom, state: StrokeState) {
    this.#state = state;
    this.#patienceS = 2.2 * room.durationS + 4;
    this.#startPosition = state.startPosition;
  }

  presses(seconds: number, sides: readonly Side[]): boolean {
    if (this.hasLetGo) return false;
    const { pauseAtPart, pauseS, stopAtPart, releaseS } = this.#state;
    const along = this.#along(sides);
    if (pauseAtPart !== null && !this.#hasPaused && along >= pauseAtPart) {
      this.#hasPaused = true;
      this.#pauseUntilS = seconds + pauseS;
      this.pressedS = 0;
      for (const side of sides) side.rest();
    }
    if (seconds < this.#pauseUntilS) return false;
    this.pressedS += STEP;
    const moves = anyMoves(sides);
    this.#stillS = moves || this.pressedS < STANDSTILL_S ? 0 : this.#stillS + STEP;
    this.hasLetGo =
      this.#stillS > STANDSTILL_S + releaseS ||
      seconds > this.#patienceS ||
      (stopAtPart !== null && along >= stopAtPart);
    return !this.hasLetGo;
  }

  /** The part of the whole travel that the slower side has reached. */
  #along(sides: readonly Side[]): number {
    let least = 1;
    for (const side of sides) {
      const along = this.#state.direction === 'extend' ? side.position : 1 - side.position;
      if (along < least) least = along;
    }
    return Math.max(
      least,
      this.#state.direction === 'extend' ? this.#startPosition : 1 - this.#startPosition,
    );
  }
}
