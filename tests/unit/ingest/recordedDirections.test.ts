import { describe, expect, test } from 'vitest';
import { previewCsv } from '../../../ingest/csv/previewCsv.ts';
import { strokesOfCsv } from '../../../ingest/csv/strokesOfTable.ts';

const QUERY = { roomId: 'room', key: 'meter', startedAt: '2026-05-02T16:20:11Z', rateHz: '10' };

/** One side at 10 Hz: eight seconds of drive at each of the currents, with long rests around them. */
function recorded(...amps: readonly number[]): string {
  const rest = new Array<number>(150).fill(0.02);
  const drives = amps.flatMap((level) => [...new Array<number>(80).fill(level), ...rest]);
  return ['front A', ...rest, ...drives].join('\n');
}

/** What is sent of each stroke: a direction, or none where the sign is to tell it. */
function sentOf(text: string, query: object = {}): unknown[] {
  const { strokes } = strokesOfCsv(text, { ...QUERY, ...query });
  return [strokes].flat().map((stroke) => (stroke as { direction?: string }).direction);
}

const previewOf = (text: string, positiveDirection: 'extend' | 'retract' = 'extend') =>
  previewCsv(text, QUERY, { sides: ['front'], positiveDirection });
const shownOf = (text: string) => previewOf(text).strokes.map(({ direction }) => direction);

describe('the directions of a recording', () => {
  test.each([
    ['positive', [9, 8, 9, 8, 9, 8]],
    ['negative', [-9, -8, -9]],
    ['positive, and but two', [9, 8]],
  ])(
    'are asked of a person where several strokes are all of one sign, and a sender is taken at it: %s',
    (_, amps) => {
      const text = recorded(...amps);
      expect(sentOf(text)).toEqual(amps.map(() => undefined));
      expect(shownOf(text)).toEqual(amps.map(() => null));
      expect(previewOf(text).problems.map(({ pointer }) => pointer)).toEqual(['/direction']);
    },
  );

  test('are those that are said, for each or for all', () => {
    const text = recorded(9, 8, 9);
    expect(sentOf(text, { direction: 'extend,retract,extend' })).toEqual(['extend', 'retract', 'extend']);
    expect(sentOf(text, { direction: 'retract' })).toEqual(['retract', 'retract', 'retract']);
  });

  test('are told by signs that differ, also where a stroke was gone on with after a rest', () => {
    expect(sentOf(recorded(9, -8, 9))).toEqual([undefined, undefined, undefined]);
    expect(shownOf(recorded(9, 9, -8))).toEqual(['extend', 'extend', 'retract']);
    expect(previewOf(recorded(9, -8), 'retract').strokes.map(({ direction }) => direction)).toEqual([
      'retract',
      'extend',
    ]);
  });

  test.each([9, -9])('of one stroke alone is told by its sign: %d A', (amps) => {
    expect(sentOf(recorded(amps))).toEqual([undefined]);
    expect(shownOf(recorded(amps))).toEqual([amps > 0 ? 'extend' : 'retract']);
  });
});
