import type { RecordedTrace } from '../../../ingest/stroke.ts';

/** `14.832,` and a little more: what a number takes in the text of an answer. */
const BYTES_OF_NUMBER = 8;
/** Shorter ones are no large answers, whatever their numbers. */
const MANY_NUMBERS = 50_000;

/**
 * Reads a trace once its turn has come to be answered whole. How long it is shows only when it was read: a long one is
 * read anew after the wait, so that nothing of it is kept meanwhile.
 */
export async function readInTurn(
  read: () => Promise<RecordedTrace>,
  waitToAnswer: (bytes: number) => Promise<void>,
): Promise<RecordedTrace> {
  const first = await unlessLong(read);
  if (typeof first !== 'number') return first;
  await waitToAnswer(first * BYTES_OF_NUMBER);
  return read();
}

/** Of a long one how many numbers it has. */
async function unlessLong(read: () => Promise<RecordedTrace>): Promise<RecordedTrace | number> {
  const trace = await read();
  const times = ({ clock }: RecordedTrace['sides'][number]) => ('t' in clock ? clock.t.length : 0);
  const numbers = trace.sides.reduce((sum, side) => sum + side.amps.length + times(side), 0);
  return numbers > MANY_NUMBERS ? numbers : trace;
}
