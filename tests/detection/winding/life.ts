import type { Random } from '../../../server/demo/simulator/random.ts';
import { ambientAt, type Camp, drawCamp, supplyAt } from './camp.ts';
import type { Move } from './moves.ts';
import type { LoggerHistory } from './recordStroke.ts';
import type { WindingRoom } from './room.ts';
import { ordinaryStroke, type StrokeState } from './strokeState.ts';
import type { Tape } from './tape.ts';
import { DAY_MS, type Variants } from './variants.ts';

/** A warm winding cools in the motor's housing by half in so many milliseconds. */
const COOLING_MS = 150_000;
/** After a storage the guides loosen up within a few strokes. */
const LOOSENING_STROKES = 2;

/** A healthy room from stroke to stroke: where it stands, how warm it is, at which camp, with which clamp offsets. */
export class Life {
  readonly #room: WindingRoom;
  readonly #variants: Variants;
  readonly #random: Random;
  #camp: Camp | null = null;
  #campNumber = -1;
  #position = 0;
  #lastMs = Number.NEGATIVE_INFINITY;
  #storedUntilStroke: number | null = null;
  readonly #windingC: Float64Array;
  readonly #offsets: number[];

  constructor(room: WindingRoom, variants: Variants, random: Random) {
    this.#room = room;
    this.#variants = variants;
    this.#random = random;
    this.#windingC = new Float64Array(room.motors.length);
    this.#offsets = room.motors.map(() => random.normal(0, 1) * Math.abs(room.logger.offsetAmps));
  }

  /** The stroke as a healthy room would make it. */
  stateOf(move: Move, random: Random): StrokeState {
    const room = this.#room;
    const variants = this.#variants;
    const camp = this.#campOf(move);
    if (variants.rezeroedBefore.includes(move.index)) this.#rezero(random);
    const state = ordinaryStroke(room, move.direction);
    state.ambientC = ambientAt(camp, move, variants);
    state.supply = supplyAt(room, camp, move, variants, state.ambientC);
    state.tiltRadians = camp.tiltRadians;
    state.weight = camp.weight;
    state.startPosition = this.#position;
    state.stopAtPart = move.stopAtPart;
    state.releaseS = random.uniform(0.1, 1.1);
    if (random.chance(variants.pauseChance)) {
      state.pauseAtPart = random.uniform(0.1, 0.85);
      state.pauseS = random.uniform(0.6, 4);
    }
    const together = this.#course(move) * Math.exp(random.normal(0, room.strokeSpread));
    state.sides.forEach((side, index) => {
      side.coulomb *= together * camp.friction[index] * Math.exp(random.normal(0, room.strokeSpread / 2));
      side.wiper *= Math.exp(random.normal(0, 0.03));
    });
    return state;
  }

  /** How warm the windings are when the stroke starts. */
  windingC(move: Move, ambientC: number): Float64Array {
    const left = 2 ** (-(move.atMs - this.#lastMs) / COOLING_MS);
    for (let side = 0; side < this.#windingC.length; side++) {
      this.#windingC[side] = ambientC + (this.#windingC[side] - ambientC) * left;
    }
    return this.#windingC;
  }

  remember(move: Move, tape: Tape): void {
    this.#windingC.set(tape.endWindingC);
    this.#lastMs = move.atMs;
    let sum = 0;
    for (const position of tape.endPosition) sum += position;
    const position = sum / tape.endPosition.length;
    this.#position = position < 0.008 ? 0 : position > 0.992 ? 1 : position;
  }

  logger(index: number): LoggerHistory {
    return { hasLaterRate: index >= this.#variants.laterRateFrom, offsetAmps: this.#offsets };
  }

  #campOf(move: Move): Camp {
    if (this.#camp === null || this.#campNumber !== move.camp) {
      this.#camp = drawCamp(this.#room, this.#random);
      this.#campNumber = move.camp;
    }
    return this.#camp;
  }

  #rezero(random: Random): void {
    const spread = 0.012 * this.#room.runningAmps;
    this.#offsets.forEach((_, side) => {
      this.#offsets[side] = random.normal(0, spread);
    });
  }

  /** Slow and benign: running in, the seasons, a storage, an ordinary service. */
  #course({ index, atMs }: Move): number {
    const { runInPart, runInStrokes, seasonPart, seasonPhase, storageStiffness, service } = this.#variants;
    const year = (2 * Math.PI * atMs) / (365.25 * DAY_MS);
    const runIn = runInPart * Math.exp(-index / runInStrokes);
    const season = seasonPart * Math.sin(year + seasonPhase);
    if (atMs - this.#lastMs > 90 * DAY_MS && this.#lastMs > 0) this.#storedUntilStroke = index;
    const stored =
      this.#storedUntilStroke === null
        ? 0
        : storageStiffness * Math.exp(-(index - this.#storedUntilStroke) / LOOSENING_STROKES);
    const after = service !== null && index >= service.beforeStroke ? service.frictionAfter : 1;
    return (1 + runIn + season + stored) * after;
  }
}
