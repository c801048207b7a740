import type { RoomDescription } from '../../../analysis/trace.ts';
import type { Logger } from './logger.ts';

/** How the motor's turning becomes the room's moving. */
export type Gearing = 'drum' | 'cross-shaft' | 'side-by-side' | 'ram' | 'rack';

/** One motor, what joins it to the room, and its part of the room. Lengths, speeds and forces as seen at the room. */
export interface Side {
  readonly name: string;
  /** Running current on a mild day on a level place, amperes. */
  readonly runAmps: number;
  readonly idleAmps: number;
  readonly ohmAt20C: number;
  readonly newtonsPerAmp: number;
  /** What the motor's turning induces: more than `newtonsPerAmp`, by what the gearbox loses. */
  readonly voltsPerMetreSecond: number;
  /** The armature's inertia, as a mass moved at the room's speed. */
  readonly armatureKg: number;
  readonly armatureJoulesPerKelvin: number;
  readonly roomKg: number;
  /** Cable, shaft or teeth between motor and room. */
  readonly springNewtonsPerMetre: number;
  /** Slack of a cable or backlash of a gearbox, taken up after each reversal. */
  readonly slackMetres: number;
  /** Rollers and guides, all of it when the room is half out. */
  readonly rollingNewtons: number;
  readonly wiperNewtons: number;
  /** The oil and grease at the usual speed and 20 °C. */
  readonly greaseNewtons: number;
  /** How the rolling goes along the travel: parts of itself, as waves. */
  readonly waves: readonly Wave[];
}

export interface Wave {
  readonly part: number;
  readonly lengthMetres: number;
  readonly phase: number;
}

export interface Controller {
  /** 0: full voltage at once. */
  readonly softStartS: number;
  /** The last part of the travel, driven slowly; 0: none. */
  readonly softStopMetres: number;
  /** Current over which it ends the stroke by itself; null: whoever holds the switch does. */
  readonly stopAmps: number | null;
  readonly stopAfterS: number;
  /** Current that it never lets through; null: none. */
  readonly limitAmps: number | null;
  /** Limit switches end the stroke before the stop is met. */
  readonly limitSwitches: boolean;
  /** What it does to a side that leads: nothing, holding it back in pulses, or giving it less. */
  readonly sync: 'none' | 'pulses' | 'duty';
  readonly leadMetres: number;
  /** A breaker that opens when warm and closes by itself; null: none, or one that never opens. */
  readonly breaker: { readonly holdAmps: number; readonly warmingS: number } | null;
}

export interface Supply {
  readonly batteryOhm: number;
  /** What a long pull takes in addition, built up within about ten seconds. */
  readonly slowOhm: number;
  readonly leadOhm: number;
  /** How often the coach has the converter on, or a generator. */
  readonly converterChance: number;
  readonly generatorChance: number;
  readonly converterRippleVolts: number;
  readonly rippleHz: number;
  /** A contact that now and then adds so much, in a sound room. */
  readonly contactOhm: number;
}

export interface CableRoom {
  readonly gearing: Gearing;
  readonly facts: RoomDescription;
  readonly travelMetres: number;
  /** Speed of a stroke on a mild day, metres a second. */
  readonly speed: number;
  readonly sides: readonly Side[];
  /** How hard the box resists one side's leading. */
  readonly boxNewtonsPerMetre: number;
  /** Once round of the pulley or gear, along the travel. */
  readonly turnMetres: number;
  /** Added to the rolling at the far end and taken from it at the near end, as parts of it. */
  readonly cantilever: number;
  /** Retracting, against extending. */
  readonly retractPart: number;
  /** A topper pulls the room in: this much when in, more when out. */
  readonly topperNewtons: number;
  readonly topperNewtonsPerMetre: number;
  readonly bulbNewtons: number;
  readonly bulbMetres: number;
  readonly stopNewtonsPerMetre: number;
  /** How strongly cold stiffens the grease, a kelvin. */
  readonly greasePerKelvin: number;
  readonly sealPerKelvin: number;
  /** What a long stay adds to the seals. */
  readonly sealSet: number;
  readonly rollerFlats: number;
  readonly controller: Controller;
  readonly supply: Supply;
  readonly logger: Logger;
}
