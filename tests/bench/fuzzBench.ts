import { FUZZES } from '../support/fuzzForms.ts';
import type { Line } from './table.ts';

const INPUTS = 100_000;

/** Every decoder through a hundred thousand inputs: a crash ends it, with the input that made it. */
export function fuzzBench(): Line[] {
  return Object.entries(FUZZES).map(([name, fuzz]) => {
    fuzz(INPUTS);
    return { what: `${name}: inputs lived through`, ratio: INPUTS, aim: `>= ${INPUTS}` };
  });
}
