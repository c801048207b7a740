import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { builtThreads } from './tests/support/builtThreads.ts';

/** A machine that others use too takes its time: what is waited for comes, or the test has failed. */
const testTimeout = 180_000;

/** No module keeps anything that another file could find: a process reads them once, for all the files that it runs. */
const project = (name: string, include: string[], extra: object = {}) => ({
  plugins: [builtThreads],
  test: { name, include, environment: 'node' as const, isolate: false, testTimeout, ...extra },
});

/** Contract and browser tests share one real Postgres, started once by the global set-up; each file gets a clone. */
const withPostgres = {
  globalSetup: ['tests/support/postgresForTests.ts'],
  setupFiles: ['tests/support/endLeftoversOfFile.ts'],
  hookTimeout: 240_000,
  expect: { poll: { timeout: 45_000 } },
};

/** Most of the slow files wait for processes of their own, or for results: fewer at a time leave two cores idle in between. */
const LEAST_AT_ONCE = 3;
/** Each holds some thirty connections to the one Postgres, which takes 300. */
const MOST_AT_ONCE = 8;

export default defineConfig({
  test: {
    maxWorkers: Math.min(MOST_AT_ONCE, Math.max(LEAST_AT_ONCE, availableParallelism() - 1)),
    projects: [
      project('unit', ['tests/unit/**/*.test.ts', 'tests/reference/**/*.test.ts']),
      project('contract', ['tests/contract/**/*.test.ts'], withPostgres),
      project('browser', ['tests/browser/**/*.test.ts'], {
        ...withPostgres,
        globalSetup: [...withPostgres.globalSetup, 'tests/support/pagesForTests.ts'],
      }),
    ],
  },
});
