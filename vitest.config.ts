import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { builtThreads } from './tests/support/builtThreads.ts';

/** No module keeps anything that another file could find: a process reads them once, for all the files that it runs. */
const project = (name: string, include: string[], extra: object = {}) => ({
  plugins: [builtThreads],
  test: { name, include, environment: 'node' as const, isolate: false, ...extra },
});

/** Contract and browser tests share one real Postgres, started once by the global set-up; each file gets a clone. */
const withPostgres = {
  globalSetup: ['tests/support/postgresForTests.ts'],
  testTimeout: 60_000,
  hookTimeout: 120_000,
  // A machine that others use too takes its time: what is waited for comes, or the test has failed.
  expect: { poll: { timeout: 20_000 } },
};

/** Most of the slow files wait for processes of their own, or for results: fewer at a time leave two cores idle in between. */
const LEAST_AT_ONCE = 3;

export default defineConfig({
  test: {
    maxWorkers: Math.max(LEAST_AT_ONCE, availableParallelism() - 1),
    projects: [
      project('unit', ['tests/unit/**/*.test.ts', 'tests/reference/**/*.test.ts'], { testTimeout: 60_000 }),
      project('contract', ['tests/contract/**/*.test.ts'], withPostgres),
      project('browser', ['tests/browser/**/*.test.ts'], {
        ...withPostgres,
        globalSetup: [...withPostgres.globalSetup, 'tests/support/pagesForTests.ts'],
      }),
    ],
  },
});
