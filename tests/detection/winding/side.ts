import { copperOhms } from './copper.ts';
import { CELLS, type LoadTable } from './loadTable.ts';
import type { Guide, Motor, WindingRoom } from './room.ts';
import type { SideState, StrokeState } from './strokeState.ts';
import { STEP_S } from './tape.ts';

/** The stop and its mounts. */
const STOP_NEWTONS_PER_METRE = 1.5e6;
/** A worm gear holds most of a load that would drive it. */
const BACK_DRIVE_EFFICIENCY = 0.35;
const RESTING_METRES_PER_SECOND = 1e-5;
/** The winding's resistance changes slowly. */
const WARM_STEPS = 20;
// Kept here for speed: an import is looked up anew in each step.
const STEP = STEP_S;
const LAST_CELL = CELLS;

/** One motor with its side of the room while a stroke runs. Distances are metres from where the stroke starts. */
export class Side {
  /** Of the gear. */
  metresPerSecond = 0;
  /** Of the room. */
  metres = 0;
  /** Of the gear, as its controller counts it. */
  gearMetres = 0;
  amps = 0;
  windingC: number;
  /** 0 to 1, of the supply. */
  duty = 0;
  isCut = false;
  /** Waits for the other side. */
  isPaced = false;
  overLimitS = 0;
  /** Of winding, brushes and lead as warm as they are. */
  siemens = 0;
  /** Of this side of the room, 0 retracted. */
  position: number;
  /** Whether the gear turns without the rack here. */
  isFree = false;
  /** What the rack does not get from a gear that turns without it, newtons. */
  lostNewtons = 0;

  readonly #motor: Motor;
  readonly #guide: Guide;
  readonly #table: LoadTable;
  readonly #own: SideState;
  readonly #newtonsPerAmp: number;
  readonly #noLoadAmps: number;
  readonly #positionPerMetre: number;
  readonly #startPosition: number;
  readonly #wayMetres: number;
  #untilWarm = 0;
  #broken = false;
  #playLeft: number;
  #takenUpNewtons = 0;

  constructor(room: WindingRoom, state: StrokeState, table: LoadTable, index: number, windingC: number) {
    this.#motor = room.motors[index];
    this.#guide = room.guides[index];
    this.#table = table;
    this.#own = state.sides[index];
    this.windingC = windingC;
    const below20 = 20 - state.ambientC;
    this.#newtonsPerAmp =
      this.#motor.newtonsPerAmp * this.#own.newtonsPerAmp * (1 + room.cold.magnetPerKelvin * below20);
    this.#noLoadAmps = this.#motor.noLoadAmps * this.#own.noLoad * (1 + room.cold.noLoadPerKelvin * below20);
    this.#positionPerMetre = (state.direction === 'extend' ? 1 : -1) / room.travelMetres;
    this.#startPosition = state.startPosition;
    this.position = state.startPosition;
    this.#wayMetres = wayMetres(room, state);
    this.#playLeft = this.#guide.backlashMetres;
    this.#warm(state.ambientC);
    this.#locate();
  }

  get generatedVolts(): number {
    return this.#newtonsPerAmp * this.metresPerSecond;
  }

  get rests(): boolean {
    return this.metresPerSecond < RESTING_METRES_PER_SECOND;
  }

  /** The frame drags this side of the room along with the other. */
  follow(other: Side): void {
    this.metres = other.metres;
    this.#locate();
  }

  /** After the current was cut the mechanism holds what it had taken up, and sticks. */
  rest(): void {
    this.#broken = false;
  }

  /** One step with this supply; `pull`: what the other side pulls at this one through the frame, against the way. */
  step(volts: number, pull: number, ambientC: number): void {
    const motor = this.#motor;
    if (this.#untilWarm-- <= 0) this.#warm(ambientC);
    const cell = Math.max(0, Math.min(this.position * LAST_CELL, LAST_CELL - 1));
    const friction = this.#frictionAt(cell);
    const push = this.#table.push[cell | 0];
    const { isFree } = this;
    this.lostNewtons = isFree ? friction + push : 0;
    const room = isFree ? 0 : this.#loadOfRoom(friction, push + pull);
    const load = room > 0 ? room / motor.gearEfficiency : room * BACK_DRIVE_EFFICIENCY;
    const terminalVolts = this.duty * volts;
    const conductance = terminalVolts > 0 ? this.#newtonsPerAmp * this.siemens : 0;
    const drive = conductance * terminalVolts - this.#newtonsPerAmp * this.#noLoadAmps - load;
    const inertia = motor.massKg / STEP;
    const viscous = this.#broken && !isFree ? this.#table.viscous / motor.gearEfficiency : 0;
    this.metresPerSecond = Math.max(
      0,
      (inertia * this.metresPerSecond + drive) / (inertia + conductance * this.#newtonsPerAmp + viscous),
    );
    this.amps = Math.max(0, (terminalVolts - this.generatedVolts) * this.siemens);
    this.#move();
  }

  #warm(ambientC: number): void {
    const { ohmsAt20C, leadOhms, windingJoulesPerKelvin, windingKelvinPerWatt } = this.#motor;
    const seconds = WARM_STEPS * STEP;
    const watts = this.amps * this.amps * copperOhms(ohmsAt20C, this.windingC);
    const lost = (this.windingC - ambientC) / windingKelvinPerWatt;
    this.windingC += ((watts - lost) * seconds) / windingJoulesPerKelvin;
    this.siemens = 1 / (copperOhms(ohmsAt20C, this.windingC) + leadOhms + this.#own.extraLeadOhms);
    this.#untilWarm = WARM_STEPS;
  }

  #frictionAt(cell: number): number {
    const at = cell | 0;
    const part = cell - at;
    const { friction } = this.#table;
    const ratio = this.metresPerSecond / this.#guide.stribeckMetresPerSecond;
    const creeping = (this.#guide.stribeckPart * this.#own.stribeck) / (1 + ratio * ratio);
    return (friction[at] * (1 - part) + friction[at + 1] * part) * (1 + creeping);
  }

  /** Until the room breaks away, the gear only takes up play and stretch. */
  #loadOfRoom(friction: number, push: number): number {
    const whole = friction + push;
    const beyond = this.metres - this.#wayMetres;
    if (this.#broken) return beyond > 0 ? whole + beyond * STOP_NEWTONS_PER_METRE : whole;
    if (this.#playLeft > 0) return 0;
    const breakaway = whole + friction * this.#guide.breakawayPart;
    if (this.#takenUpNewtons >= breakaway) this.#broken = true;
    return Math.min(this.#takenUpNewtons, Math.max(breakaway, 0));
  }

  #move(): void {
    const moved = this.metresPerSecond * STEP;
    this.gearMetres += moved;
    if (this.isFree) return;
    if (this.#playLeft > 0) this.#playLeft -= moved;
    else if (!this.#broken) this.#takenUpNewtons += moved * this.#guide.stiffnessNewtonsPerMetre;
    else {
      this.metres += moved * (1 - this.#own.slip);
      this.#locate();
    }
  }

  #locate(): void {
    this.position = this.#startPosition + this.metres * this.#positionPerMetre;
    const { free } = this.#own;
    this.isFree = free !== null && this.position >= free[0] && this.position <= free[1];
  }
}

function wayMetres(room: WindingRoom, { direction, startPosition, block }: StrokeState): number {
  const end = block ?? (direction === 'extend' ? 1 : 0);
  return Math.max(
    0,
    (direction === 'extend' ? end - startPosition : startPosition - end) * room.travelMetres,
  );
}
