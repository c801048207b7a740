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
  /** What the rack does not get from a gear that turns without it, newtons. */
  lostNewtons = 0;

  readonly #motor: Motor;
  readonly #guide: Guide;
  readonly #table: LoadTable;
  readonly #own: SideState;
  readonly #newtonsPerAmp: number;
  readonly #noLoadAmps: number;
  readonly #cellsPerMetre: number;
  readonly #startCell: number;
  readonly #signOfTravel: number;
  readonly #wayMetres: number;
  #ohms = 0;
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
    this.#cellsPerMetre = CELLS / room.travelMetres;
    this.#startCell = state.startPosition * CELLS;
    this.#signOfTravel = state.direction === 'extend' ? 1 : -1;
    this.#wayMetres = wayMetres(room, state);
    this.#playLeft = this.#guide.backlashMetres;
    this.#warm(state.ambientC);
  }

  /** Position of this side of the room, 0 retracted. */
  get position(): number {
    return (this.#startCell + this.#signOfTravel * this.metres * this.#cellsPerMetre) / CELLS;
  }

  /** Of winding, brushes and lead as warm as they are. */
  get siemens(): number {
    return 1 / this.#ohms;
  }

  get generatedVolts(): number {
    return this.#newtonsPerAmp * this.metresPerSecond;
  }

  get rests(): boolean {
    return this.metresPerSecond < RESTING_METRES_PER_SECOND;
  }

  /** Whether the gear turns without the rack here. */
  get isFree(): boolean {
    const { free } = this.#own;
    if (free === null) return false;
    const { position } = this;
    return position >= free[0] && position <= free[1];
  }

  /** The frame drags this side of the room along with the other. */
  follow(other: Side): void {
    this.metres = other.metres;
  }

  /** After the current was cut the mechanism holds what it had taken up, and sticks. */
  rest(): void {
    this.#broken = false;
  }

  /** One step with this supply; `pull`: what the other side pulls at this one through the frame, against the way. */
  step(volts: number, pull: number, ambientC: number): void {
    const motor = this.#motor;
    if (this.#untilWarm-- <= 0) this.#warm(ambientC);
    const friction = this.#frictionNow();
    const isFree = this.isFree;
    this.lostNewtons = isFree ? friction + this.#table.push[this.#cell() | 0] : 0;
    const room = isFree ? 0 : this.#loadOfRoom(friction, pull);
    const load = room > 0 ? room / motor.gearEfficiency : room * BACK_DRIVE_EFFICIENCY;
    const powered = this.duty > 0;
    const conductance = powered ? this.#newtonsPerAmp / this.#ohms : 0;
    const drive = conductance * this.duty * volts - this.#newtonsPerAmp * this.#noLoadAmps - load;
    const inertia = motor.massKg / STEP_S;
    const viscous = this.#broken && !isFree ? this.#table.viscous / motor.gearEfficiency : 0;
    const speed =
      (inertia * this.metresPerSecond + drive) / (inertia + conductance * this.#newtonsPerAmp + viscous);
    this.metresPerSecond = Math.max(0, speed);
    this.amps = powered ? (this.duty * volts - this.#newtonsPerAmp * this.metresPerSecond) / this.#ohms : 0;
    if (this.amps < 0) this.amps = 0;
    this.#move(isFree);
  }

  #warm(ambientC: number): void {
    const { ohmsAt20C, leadOhms, windingJoulesPerKelvin, windingKelvinPerWatt } = this.#motor;
    const seconds = WARM_STEPS * STEP_S;
    const watts = this.amps * this.amps * copperOhms(ohmsAt20C, this.windingC);
    const lost = (this.windingC - ambientC) / windingKelvinPerWatt;
    this.windingC += ((watts - lost) * seconds) / windingJoulesPerKelvin;
    this.#ohms = copperOhms(ohmsAt20C, this.windingC) + leadOhms + this.#own.extraLeadOhms;
    this.#untilWarm = WARM_STEPS;
  }

  #cell(): number {
    const cell = this.#startCell + this.#signOfTravel * this.metres * this.#cellsPerMetre;
    return Math.max(0, Math.min(cell, CELLS));
  }

  #frictionNow(): number {
    const cell = this.#cell();
    const at = cell | 0;
    const ahead = at < CELLS ? at + 1 : CELLS;
    const part = cell - at;
    const { friction } = this.#table;
    const ratio = this.metresPerSecond / this.#guide.stribeckMetresPerSecond;
    const creeping = (this.#guide.stribeckPart * this.#own.stribeck) / (1 + ratio * ratio);
    return (friction[at] * (1 - part) + friction[ahead] * part) * (1 + creeping);
  }

  /** Until the room breaks away, the gear only takes up play and stretch. */
  #loadOfRoom(friction: number, pull: number): number {
    const whole = friction + this.#table.push[this.#cell() | 0] + pull;
    const beyond = this.metres - this.#wayMetres;
    if (this.#broken) return beyond > 0 ? whole + beyond * STOP_NEWTONS_PER_METRE : whole;
    if (this.#playLeft > 0) return 0;
    const breakaway = whole + friction * this.#guide.breakawayPart;
    if (this.#takenUpNewtons >= breakaway) this.#broken = true;
    return Math.min(this.#takenUpNewtons, Math.max(breakaway, 0));
  }

  #move(isFree: boolean): void {
    const moved = this.metresPerSecond * STEP_S;
    this.gearMetres += moved;
    if (isFree) return;
    if (this.#playLeft > 0) this.#playLeft -= moved;
    else if (!this.#broken) this.#takenUpNewtons += moved * this.#guide.stiffnessNewtonsPerMetre;
    else this.metres += moved * (1 - this.#own.slip);
  }
}

/** The winding's resistance changes slowly. */
const WARM_STEPS = 20;

function wayMetres(room: WindingRoom, { direction, startPosition, block }: StrokeState): number {
  const end = block ?? (direction === 'extend' ? 1 : 0);
  return Math.max(
    0,
    (direction === 'extend' ? end - startPosition : startPosition - end) * room.travelMetres,
  );
}
