import { afterEach, describe, expect, test } from 'vitest';
import { tickNumber } from '../../../dashboards/src/charts/drawn/tickNumber.ts';
import { comparisonPath } from '../../../dashboards/src/compare/question.ts';
import { fieldTime, momentOf } from '../../../dashboards/src/fieldTime.ts';
import {
  agoText,
  placeText,
  quantity,
  referenceText,
  temperatureText,
  toldHere,
  whenText,
} from '../../../dashboards/src/format.ts';
import { metresField, typedMetres, typedNumber } from '../../../dashboards/src/forms/numbers.ts';
import { DEVICE, readAs } from '../../../dashboards/src/reader.ts';

afterEach(() => readAs(DEVICE));

/** Numbers and their units hold together by a space that does not break. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

const us = { units: 'us', timeZone: 'America/Denver', locale: 'en-US' } as const;
const german = { units: 'metric', timeZone: 'Europe/Berlin', locale: 'de-DE' } as const;

describe('values', () => {
  test('are written in the reader’s units', () => {
    readAs(us);
    // 0.96 m is 37.795 in, and 20 °C is 68 °F, by definition of inch and degree.
    expect([quantity(0.96, 'm'), quantity(20, '°C'), temperatureText(20)].map(plain)).toEqual([
      '37.8 in',
      '68.0 °F',
      '68 °F',
    ]);
    expect(plain(placeText(0.5, 0.96))).toBe('50% (18.9 in)');
    readAs(german);
    expect([quantity(0.96, 'm'), quantity(20, '°C'), temperatureText(20)].map(plain)).toEqual([
      '0,96 m',
      '20,0 °C',
      '20 °C',
    ]);
    expect(plain(placeText(0.5, 0.96))).toBe('50 % (48 cm)');
  });

  test('in the service’s sentences are written as all others are', () => {
    const said =
      'The motor drew 60 % more, 12.5 A, at 100 % of its way; it took 0.25 s of 12 V at 20 °C. Room 1.5 Another.';
    readAs(us);
    expect(plain(toldHere(said))).toBe(
      'The motor drew 60% more, 12.5 A, at 100% of its way; it took 0.25 s of 12 V at 68 °F. Room 1.5 Another.',
    );
    readAs(german);
    expect(toldHere(said)).toBe(
      'The motor drew 60\u00a0% more, 12,5\u00a0A, at 100\u00a0% of its way; it took 0,25\u00a0s of 12\u00a0V at 20\u00a0°C. Room 1.5 Another.',
    );
  });

  test('how long ago something was is told in the language of the page, whatever numbers are written in', () => {
    readAs(german);
    const at = Date.parse('2026-05-02T16:00:00Z');
    expect(agoText(at, at + 3 * 3_600_000)).toBe('3 hours ago');
    // They follow "last stroke" and "heard".
    expect(agoText(at, at + 20_000)).toBe('just now');
    expect(agoText(at, at + 31 * 86_400_000)).toBe('1 month ago');
  });

  test('at an axis are written as finely as its steps are', () => {
    readAs(us);
    const labels = [0, 0.005, 0.01, 0.015, 0.02].map((value) => tickNumber(value, 0.005));
    expect(labels).toEqual(['0', '0.005', '0.01', '0.015', '0.02']);
    expect([10, 12.5].map((value) => tickNumber(value, 2.5))).toEqual(['10', '12.5']);
  });

  test('are said to be brought to a supply and a temperature in the same', () => {
    readAs(us);
    expect(plain(referenceText({ nominalVolts: 12 }))).toBe('12.6 V and 68 °F');
    readAs(german);
    expect(plain(referenceText({ nominalVolts: 12 }))).toBe('12,6 V and 20 °C');
    expect(plain(referenceText({ nominalVolts: 24 }))).toBe('25,2 V and 20 °C');
  });

  test('follow the region where no units are set', () => {
    readAs({ ...us, units: null });
    expect(plain(temperatureText(20))).toBe('68 °F');
    readAs({ ...us, units: null, locale: 'en-GB' });
    expect(plain(temperatureText(20))).toBe('20 °C');
  });

  test('are written all the same for a zone or a language that this browser does not know', () => {
    readAs({ units: null, timeZone: 'Mars/Olympus', locale: 'not a tag' });
    expect(whenText('2026-05-02T16:20:00Z')).toMatch(/2026/);
  });

  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    [' .5 ', 0.5],
    ['', null],
    ['-3', -3],
    ['1e3', Number.NaN],
    ['twelve', Number.NaN],
    ['1.2.3', Number.NaN],
  ])('typed as “%s” are %d', (text, value) => {
    expect(typedNumber(text)).toBe(value);
  });

  test('typed in the reader’s unit come back as they were', () => {
    for (const settings of [us, german]) {
      readAs(settings);
      for (const text of ['1', '37.8', '96.5', '120']) expect(metresField(typedMetres(text))).toBe(text);
    }
  });
});

describe('moments in fields', () => {
  test('stand in the reader’s zone and come back as they were', () => {
    readAs(us);
    expect(fieldTime(new Date('2026-05-02T16:20:00Z'))).toBe('2026-05-02T10:20');
    expect(momentOf('2026-05-02T10:20')?.toISOString()).toBe('2026-05-02T16:20:00.000Z');
    readAs(german);
    expect(fieldTime(new Date('2026-01-02T23:30:00Z'))).toBe('2026-01-03T00:30');
  });

  test('go on across a change of clocks', () => {
    readAs(german);
    // Clocks in Berlin went from 02:00 to 03:00 on 29 March 2026, and back from 03:00 to 02:00 on 25 October 2026.
    for (const at of ['2026-03-29T00:59:00Z', '2026-03-29T01:01:00Z', '2026-10-25T03:00:00Z'])
      expect(momentOf(fieldTime(new Date(at)))?.toISOString()).toBe(new Date(at).toISOString());
  });

  test('that are none are null', () => {
    for (const text of ['', 'soon', '2026-13-40T00:00']) expect(momentOf(text)).toBeNull();
  });
});

test('the days of two spans begin and end where the reader is, not where the device is', () => {
  const spans = {
    beforeFrom: '2026-03-01',
    beforeTo: '2026-03-07',
    afterFrom: '2026-03-08',
    afterTo: '2026-03-08',
  };
  readAs(us);
  const asked = new URLSearchParams(comparisonPath('a', { kind: 'spans', spans }).split('?')[1]);
  // Denver is 7 h behind UTC, and 6 h from 2 o'clock on 8 March 2026 on (RFC 8536 zone America/Denver).
  expect(Object.fromEntries(asked)).toEqual({
    beforeFrom: '2026-03-01T07:00:00.000Z',
    beforeTo: '2026-03-08T06:59:59.999Z',
    afterFrom: '2026-03-08T07:00:00.000Z',
    afterTo: '2026-03-09T05:59:59.999Z',
  });
});
