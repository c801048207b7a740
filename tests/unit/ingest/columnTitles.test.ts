import { describe, expect, test } from 'vitest';
import { previewCsv } from '../../../ingest/csv/previewCsv.ts';
import { readTable } from '../../../ingest/csv/table.ts';
import { DecodeError } from '../../../ingest/decodeError.ts';

const ONE = ['main'];
const TWO = ['front', 'rear'];

/** What each column of a file is taken for, of a room with these sides: `time/s`, `side/main/A`, `none`. */
function takenFor(text: string, sides: readonly string[]): string[] {
  const { columns } = previewCsv(text, {}, { sides, positiveDirection: 'extend' });
  return columns.map(({ kind, side, unit }) => [kind, side, unit].filter((part) => part !== null).join('/'));
}

/** The amperes of each side, by the reading that stores them. */
function ampsOf(text: string, onlySide: string | null): Record<string, number[]> {
  const naming = { side: onlySide ?? 'main', onlySide, roomSides: [] };
  const { sides } = readTable(text, { naming, timed: true, columns: null });
  return Object.fromEntries(sides.map(({ name, values }) => [name, values]));
}

function placeOfFault(text: string): string {
  try {
    ampsOf(text, 'main');
  } catch (error) {
    if (error instanceof DecodeError) return error.faults[0].pointer;
    throw error;
  }
  return 'none';
}

describe('the only current of a file', () => {
  test.each(['Strom (A)', 'I[A]', 'Strom', 'Ch1', 'CH 1 (A)', 'Value', 'Current (A)', 'rear A'])(
    'is that of the only side of a room, whatever a meter calls it: %s',
    (title) => {
      const text = `Zeit (s);${title}\n0;1,5\n1;2,5\n`;
      expect(takenFor(text, ONE)).toEqual(['time/s', 'side/main/A']);
      expect(ampsOf(text, 'main')).toEqual({ main: [1.5, 2.5] });
    },
  );

  test('is no one side of several, and two are not one', () => {
    expect(takenFor('t;Ch1\n0;1\n', TWO)).toEqual(['time/s', 'side/Ch1/A']);
    expect(takenFor('t;Ch1;Ch2\n0;1;2\n', ONE)).toEqual(['time/s', 'side/Ch1/A', 'side/Ch2/A']);
  });

  test('keeps its unit', () => {
    expect(takenFor('t;Strom (mA)\n0;1500\n', ONE)).toEqual(['time/s', 'side/main/mA']);
  });

  test('keeps the side that is said with it', () => {
    const said = previewCsv('t;amps\n0;1\n', { side: 'rear' }, { sides: ONE, positiveDirection: 'extend' });
    expect(said.columns[1].side).toBe('rear');
  });
});

describe('a title', () => {
  test.each(['t,FRONT,Rear', 't,Front A,REAR A', 't,"front, A"," rear ,A"', 't,Front (A),_rear_ (A)'])(
    'means a side of the room however it writes it: %s',
    (titles) => {
      expect(takenFor(`${titles}\n0,1,2\n`, TWO)).toEqual(['time/s', 'side/front/A', 'side/rear/A']);
    },
  );

  test.each([
    't,amps_front,amps_rear',
    't,Amps front,Amps rear',
    't,amps.front,amps.rear',
    't,amps(front),amps[rear]',
    't,front:amps,rear:amps',
  ])('may say the unit before the side as well as behind it: %s', (titles) => {
    expect(takenFor(`${titles}\n0,1,2\n`, TWO)).toEqual(['time/s', 'side/front/A', 'side/rear/A']);
    expect(takenFor(`${titles.replaceAll(/amps/gi, 'milliamps')}\n0,1,2\n`, TWO)).toEqual([
      'time/s',
      'side/front/mA',
      'side/rear/mA',
    ]);
  });

  test('means one of several words by their blanks too, and no side that only begins so', () => {
    const sides = ['Front  Left', 'front'];
    const titles = 't,front_left A,Front A,front right A';
    const taken = ['side/Front  Left/A', 'side/front/A', 'side/front right/A'];
    expect(takenFor(`${titles}\n0,1,2,3\n`, sides)).toEqual(['time/s', ...taken]);
  });

  test('means none where two sides of the room differ in that alone, unless it is written so', () => {
    expect(takenFor('t,A1,a1\n0,1,2\n', ['A1', 'a1'])).toEqual(['time/s', 'side/A1/A', 'side/a1/A']);
    expect(takenFor('t,DEN A\n0,1\n', ['Den', 'den'])).toEqual(['time/s', 'side/DEN/A']);
  });
});

describe('a column of unit names', () => {
  test.each([
    ['Zeit;Strom;Einheit', '0;7;A', 'side/main/A', 7],
    ['Time;Value;Unit', '0;7;A', 'side/main/A', 7],
    ['Time;Value;Unit', '0;7000;mA', 'side/main/mA', 7],
    ['Time;Ch1;Kind', '0;7;A DC', 'side/main/A', 7],
    ['Time;Current (A);Unit', '0;7;A', 'side/main/A', 7],
  ])('is no side, and says the unit of the numbers beside it: %s, %s', (titles, row, taken, amps) => {
    const text = `${titles}\n${row}\n`;
    expect(takenFor(text, ONE)).toEqual(['time/s', taken, 'none']);
    expect(ampsOf(text, 'main')).toEqual({ main: [amps] });
  });

  test('tells a voltage from a current', () => {
    expect(takenFor('Time;Unit;Value1;Unit1;Value2;Unit2\n0;s;7;A;12;V\n', ONE)).toEqual([
      'time/s',
      'none',
      'side/main/A',
      'none',
      'supply/V',
      'none',
    ]);
  });

  test.each([
    ['that changes', 'Time;Value;Unit\n0;7;A\n1;800;mA\n', '/line/3/column/3'],
    ['that is told late', 'Time;Value;Unit\n0;7;\n1;800;mA\n', '/line/3/column/3'],
    ['that is none', 'Time;Value;Unit\n0;7;kA\n', '/line/2/column/3'],
  ])('is told where it stands: one %s', (_, text, pointer) => {
    expect(placeOfFault(text)).toBe(pointer);
  });

  test('may leave cells empty', () => {
    expect(placeOfFault('Time;Value;Unit\n0;7;A\n1;8;\n')).toBe('none');
  });
});

describe("a column of a meter's own words", () => {
  test('is passed over, also where it stands between the time and the current', () => {
    const text = 'No.,Time,DC/AC,Value,Unit,AUTO\n1,16:20:11,DC,7,A,AUTO\n2,16:20:12,DC,8,A,\n';
    expect(ampsOf(text, 'main')).toEqual({ main: [7, 8] });
    expect(takenFor('t,front A,remark\n0,1,start\n', TWO)).toEqual(['time/s', 'side/front/A', 'none']);
  });

  test('is told where it holds a number after all, and where it is to be a side of the room', () => {
    expect(placeOfFault('t,amps,remark\n0,1,start\n1,2,\n2,3,5\n')).toBe('/line/4/column/3');
    expect(placeOfFault('t,rear A,amps front\n0,1,start\n')).toBe('/line/2/column/3');
    expect(takenFor('t,rear,front\n0,1,start\n', TWO)).toEqual(['time/s', 'side/rear/A', 'side/front/A']);
  });
});

describe('a unit that no stroke is made of', () => {
  test.each(['I (µA)', 'I [nA]', 'P (W)', 'R (Ω)', 'f (Hz)'])('is no current in amperes: %s', (title) => {
    expect(takenFor(`t,${title}\n0,1\n`, ONE)).toEqual(['time/s', 'none']);
    expect(placeOfFault(`t,${title}\n0,1\n`)).toBe('/line/1');
    expect(ampsOf(`t,${title},amps\n0,1,2\n`, 'main')).toEqual({ main: [2] });
  });

  test.each(['Temp (°F)', 'temp_F', 'Ambient Fahrenheit', 'temperature [F]'])(
    'but degrees Fahrenheit are told in Celsius: %s',
    (title) => {
      expect(takenFor(`t,amps,${title}\n0,1,212\n`, ONE)[2]).toBe('ambient/F');
      const naming = { side: 'main', onlySide: 'main', roomSides: [] };
      const text = `t,amps,${title}\n0,1,212\n1,1,-40\n2,1,72\n`;
      // Water boils at 212 °F, and both scales meet at 40 below zero.
      expect(readTable(text, { naming, timed: true, columns: null }).ambient?.values).toEqual([
        100, -40, 22.22,
      ]);
    },
  );

  test('nor is a side that is only called so', () => {
    expect(takenFor('t,slide F,slide W\n0,1,2\n', TWO)).toEqual([
      'time/s',
      'side/slide F/A',
      'side/slide W/A',
    ]);
  });
});

describe('a row of units below the titles', () => {
  test.each([
    ['Time,front,rear', 's,A,mA', '0,1,2000'],
    ['Time,front,rear', '(ms),(A),(mA)', '0,1,2000'],
    ['x-axis,front,rear', 'second,Ampere,Milliampere', '0.0E+0,1.0E+0,2.0E+3'],
    ['Time (s),front (A),rear', ',,mA', '0,1,2000'],
  ])('is of the columns that it stands in: %s over %s', (titles, units, row) => {
    const text = `${titles}\n${units}\n${row}\n`;
    expect(ampsOf(text, null)).toEqual({ front: [1], rear: [2] });
    expect(takenFor(text, TWO).slice(1)).toEqual(['side/front/A', 'side/rear/mA']);
    expect(previewCsv(text, {}, { sides: TWO, positiveDirection: 'extend' }).columns[1].examples).toEqual([
      row.split(',')[1],
    ]);
  });

  test('of which there is one alone', () => {
    expect(placeOfFault('t,front\ns,A\ns,A\n0,1\n')).toBe('/line/3/column/1');
  });
});

describe('a cell', () => {
  test('may say its own unit, also another than the cell above', () => {
    const text = 'Time,Current,Supply\n0 s,1.5 A,12.6 V\n50 ms,20 mA DC,12600 mV\n';
    const naming = { side: 'main', onlySide: 'main', roomSides: [] };
    const table = readTable(text, { naming, timed: true, columns: null });
    expect([table.time?.seconds, table.sides[0].values, table.supply?.values]).toEqual([
      [0, 0.05],
      [1.5, 0.02],
      [12.6, 12.6],
    ]);
    expect(placeOfFault('Time,Current\n0,1 A\n1,12 V\n')).toBe('/line/3/column/2');
  });

  test.each(['OL', 'NaN', '--', '----', 'N/A', ' '])(
    'of a reading that there is not is a missed sample: "%s"',
    (cell) => {
      expect(ampsOf(`t,amps\n0,1\n1,${cell}\n`, 'main')).toEqual({ main: [1, Number.NaN] });
    },
  );

  test('may be negative by a typesetter’s minus', () => {
    expect(ampsOf('t,amps\n0,\u22121.5\n', 'main')).toEqual({ main: [-1.5] });
  });
});

test('a file without a row below its titles is told so, and one with numbers alone as well', () => {
  expect(placeOfFault('t,front A\n')).toBe('/line/1');
  expect(placeOfFault('0,1\n')).toBe('/line/1');
  const role = { kind: 'side', side: 'front', per: 1 } as const;
  const naming = { side: 'main', onlySide: null, roomSides: [] };
  expect(readTable('7\n', { naming, timed: false, columns: [role] }).sides[0].values).toEqual([7]);
});
