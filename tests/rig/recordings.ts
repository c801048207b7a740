import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Direction } from '../../analysis/trace.ts';

/**
 * The recordings of a test rig: C. Ruiz-Carcel and A. Starr, "Data set for Data-based Detection and Diagnosis of
 * Faults in Linear Actuators", Cranfield University, doi:10.17862/cranfield.rd.5097649, described in the same authors'
 * paper in IEEE Transactions on Instrumentation and Measurement 67(9), 2018. A ball screw drives a load of 20 or
 * 40 kgf out and back by 120 mm; a Hall-effect sensor reads the motor's current. The README says how to obtain it.
 */
export interface RigStroke {
  readonly loadKgf: number;
  readonly condition: 'normal' | 'lackLubrication1';
  readonly run: number;
  readonly direction: Direction;
  /** Seconds from the beginning of its recording. */
  readonly startS: number;
  /** Amperes, always positive, 25 a second. */
  readonly amps: readonly number[];
}

export const RIG_RATE_HZ = 25;
const CUTS = 'strokes.csv';
const HALF_A_SAMPLE_S = 0.5 / RIG_RATE_HZ;

/** Whether a folder holds the recordings. */
export function hasRecordings(folder: string): boolean {
  return existsSync(join(folder, CUTS));
}

/**
 * Every stroke of the folder, cut by its strokes.csv, in that file's order; with so much of the pause between the way out and the
 * way back as `heldS` says, seconds, 2.9 at most, in which the motor is held in place.
 */
export function readRecordings(folder: string, heldS = 0): RigStroke[] {
  const recordings = new Map<string, number[][]>();
  return readTable(join(folder, CUTS)).map(([file, condition, , load, run, direction, start, end]) => {
    let recording = recordings.get(file);
    if (recording === undefined) {
      recording = readTable(join(folder, file)).map((row) => row.map(Number));
      recordings.set(file, recording);
    }
    const [startS, endS] = [Number(start), Number(end)];
    const fromS = startS - (direction === 'retract' ? heldS : 0) - HALF_A_SAMPLE_S;
    const toS = endS + (direction === 'extend' ? heldS : 0) - HALF_A_SAMPLE_S;
    return {
      loadKgf: Number(load),
      condition: oneOf(['normal', 'lackLubrication1'] as const, condition),
      run: Number(run),
      direction: oneOf(['extend', 'retract'] as const, direction),
      startS,
      // A retract runs straight into the next extend: the sample at the end is the next stroke's first.
      amps: recording.filter(([timeS]) => timeS > fromS && timeS < toS).map(([, amps]) => amps),
    };
  });
}

/** The whole recording of a run, and when the strokes in it begin and end, seconds. */
export interface RigRun {
  readonly file: string;
  readonly csv: string;
  readonly strokes: readonly { direction: Direction; startS: number; endS: number }[];
}

/** Every run of the folder as it lies there, in the order of its strokes.csv. */
export function readRuns(folder: string): RigRun[] {
  const rows = readTable(join(folder, CUTS));
  return [...new Set(rows.map(([file]) => file))].map((file) => ({
    file,
    csv: readFileSync(join(folder, file), 'utf8'),
    strokes: rows
      .filter(([of]) => of === file)
      .map(([, , , , , direction, start, end]) => ({
        direction: oneOf(['extend', 'retract'] as const, direction),
        startS: Number(start),
        endS: Number(end),
      })),
  }));
}

/** The rows of a plain CSV file, less its header. */
function readTable(path: string): string[][] {
  const lines = readFileSync(path, 'utf8').trim().split(/\r?\n/);
  return lines.slice(1).map((line) => line.split(','));
}

function oneOf<Known extends string>(known: readonly Known[], found: string): Known {
  const match = known.find((name) => name === found);
  if (match === undefined) throw new Error(`Expected one of ${known.join(', ')}; found ${found}.`);
  return match;
}
