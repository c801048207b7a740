import type { Plugin } from 'vitest/config';

const FROM_SOURCES = "new URL('./";

/**
 * A service within a test begins its threads as `npm start` does, from what was built: from the sources each takes
 * some seconds of a processor to begin, and tests begin hundreds.
 */
export const builtThreads: Plugin = {
  name: 'built-threads',
  enforce: 'pre',
  transform: (code, id) => {
    if (!/\/server\/(work|results)\/\w+\/start\w+Thread\.ts$/.test(id)) return null;
    if (!code.includes(FROM_SOURCES)) throw new Error(`${id} does not say where its thread begins.`);
    return code.replace(FROM_SOURCES, "new URL('../../dist/");
  },
};
