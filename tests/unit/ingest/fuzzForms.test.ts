import { test } from 'vitest';
import { FUZZES } from '../../support/fuzzForms.ts';

/** `npm run bench -- fuzz` gives each fifty times as many. */
const RUNS = 2000;

test.each(Object.entries(FUZZES))('%s in whatever state is read, or refused with the place', (_, fuzz) =>
  fuzz(RUNS),
);
