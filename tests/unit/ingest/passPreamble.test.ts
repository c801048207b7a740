import { describe, expect, test } from 'vitest';
import { passPreamble } from '../../../ingest/csv/passPreamble.ts';

const ROWS = ['0;0,02;0,01', '0,1;9,11;8,7', '0,2;9,05;8,66'];

describe('what a meter writes above its table', () => {
  test.each([
    ['parted from it by an empty line', ['Model;M 1', 'Serial;123', '', 't (s);Ch1;Ch2', ...ROWS], 3],
    ['with other many fields', ['Recorded 20 Nov 2026', 't (s);Ch1;Ch2', ...ROWS], 1],
    ['with quotes and commas', ['"Meter, 2 channels",9', '', 'No.,Value,Unit', '1,0.02,A', '2,9.1,A'], 2],
  ])('is emptied: %s', (_, lines, passed) => {
    for (const end of ['\n', '\r\n', '\r']) {
      const { text, lines: told } = passPreamble(lines.join(end));
      expect(told).toBe(passed);
      expect(text).toBe('\n'.repeat(passed) + lines.slice(passed).join(end));
    }
  });

  test.each([
    ['a table alone', ['t (s);Ch1;Ch2', ...ROWS]],
    ['a row of units', ['t;Ch1;Ch2', 's;A;A', ...ROWS]],
    ['empty lines', ['', '', 't (s);Ch1;Ch2', ...ROWS]],
    ['one column', ['amps', '0,02', '9,11', '9,05']],
    ['a table without titles', ['Model;M 1', ...ROWS]],
    ['a table with a row that lacks a field', ['Time,Value,Unit', '1,0.02,A', '9.1,A', '3,9.0,A', '4,9.2,A']],
    [
      'the same in quotes',
      ['Time,Value,Unit', '"1","0,02","A"', '"9,1","A"', '"3","9,0","A"', '"4","9,2","A"'],
    ],
    [
      'the same with clock times',
      ['Time;Value', '16:20:11;A', '16:20:12', '16:20:13;A', '16:20:14;A', '16:20:15;A'],
    ],
    ['no table', ['name,remark', 'Mara']],
    ['nothing', ['']],
  ])('is not seen in %s', (_, lines) => {
    expect(passPreamble(lines.join('\n'))).toEqual({ text: lines.join('\n'), lines: 0 });
  });
});
