import { buildIfStale } from './build.mjs';

/** Starts the service as it stands in the sources, from the files that it is built into. */
const why = await buildIfStale().then(
  () => null,
  (error) => error,
);
if (why === null) await import('./dist/main.mjs');
else await startFromSources(why);

/** Where nothing may be written, or what builds is not installed. */
async function startFromSources(error) {
  console.error(`Starting from the sources, which takes longer: ${error.message}`);
  const { register } = await import('tsx/esm/api');
  register();
  await import('./main.ts');
}
