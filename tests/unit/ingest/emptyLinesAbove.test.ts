import { expect, test } from 'vitest';
import { readTable } from '../../../ingest/csv/table.ts';

const naming = { side: 'main', onlySide: null, roomSides: ['front', 'rear'] };

test.each(['\n', '\r\n', '\r'])(
  'lines above the titles that are empty hide no delimiter and are counted',
  (end) => {
    const lines = ['', '', 'front A,rear A', '0.02,0.01', '9.1,8.7'];
    const { sides, lines: at } = readTable(lines.join(end), { naming, timed: false, columns: null });
    expect(sides.map(({ name, values }) => [name, values])).toEqual([
      ['front', [0.02, 9.1]],
      ['rear', [0.01, 8.7]],
    ]);
    expect(at).toEqual([4, 5]);
  },
);
