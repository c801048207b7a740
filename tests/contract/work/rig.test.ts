import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { measureStroke } from '../../../analysis/measureStroke.ts';
import type { RoomDescription } from '../../../analysis/trace.ts';
import { readRecording } from '../../../ingest/csv/recording.ts';
import { playRig, type RigResult } from '../../rig/playRig.ts';
import {
  hasRecordings,
  RIG_RATE_HZ,
  type RigStroke,
  readRecordings,
  readRuns,
} from '../../rig/recordings.ts';
import { rigTable, shareBeyond } from '../../rig/rigTable.ts';
import { startService, type TestService } from '../../support/service.ts';

/**
 * On recordings that nobody here made: C. Ruiz-Carcel and A. Starr, "Data set for Data-based Detection and Diagnosis
 * of Faults in Linear Actuators", Cranfield University, doi:10.17862/cranfield.rd.5097649; described in the same
 * authors' paper in IEEE Transactions on Instrumentation and Measurement 67(9), 2018.
 */
const folder =
  process.env.SLIDELOAD_OPEN_DATA ??
  fileURLToPath(new URL('../../../../shared/open-data/linear-actuator', import.meta.url));
const isThere = hasRecordings(folder);
const title = isThere
  ? 'the rig of Ruiz-Carcel and Starr'
  : `the rig of Ruiz-Carcel and Starr (skipped: no recordings in ${folder}; see README, The rig)`;

describe.skipIf(!isThere)(title, () => {
  let service: TestService;
  let results: RigResult[];

  beforeAll(async () => {
    service = await startService();
    results = await playRig({ url: service.url, token: await service.signIn() }, readRecordings(folder));
  });
  afterAll(() => service?.stop());

  // Mean current over a stroke, amperes, computed from the files by whoever converted them.
  test.each([
    [20, 'normal', 'extend', 0.751],
    [20, 'normal', 'retract', 0.962],
    [20, 'lackLubrication1', 'extend', 0.873],
    [20, 'lackLubrication1', 'retract', 1.085],
    [40, 'normal', 'extend', 0.677],
    [40, 'normal', 'retract', 1.103],
    [40, 'lackLubrication1', 'extend', 0.797],
    [40, 'lackLubrication1', 'retract', 1.222],
  ] as const)('the mean current at %i kgf, %s, %s, as the traces come back', async (...of) => {
    const [loadKgf, condition, direction, publishedAmps] = of;
    const result = results.find((one) => one.loadKgf === loadKgf && one.direction === direction);
    const ids = result?.strokeIds[condition] ?? [];
    expect(ids).toHaveLength(50);
    const token = await service.signIn();
    const means = await Promise.all(
      ids.map(async (id) => {
        const trace = await service.as(token, 'GET', `/strokes/${id}/trace`);
        const amps: number[] = trace.body.sides[0].amps;
        return amps.reduce((sum, value) => sum + value, 0) / amps.length;
      }),
    );
    const mean = means.reduce((sum, value) => sum + value, 0) / means.length;
    expect(Math.abs(mean - publishedAmps)).toBeLessThanOrEqual(0.0005);
  });

  test('strokes without lubricant lie beyond the limits of the running current, healthy ones within', () => {
    const faulty = shareBeyond(results, 'runningAmps', 'faulty');
    const healthy = shareBeyond(results, 'runningAmps', 'healthy');
    expect(faulty, rigTable(results)).toBeGreaterThanOrEqual(0.99);
    expect(healthy, rigTable(results)).toBeLessThanOrEqual(0.03);
  });

  test('rising-draw is raised within six strokes without lubricant, and on no healthy one', () => {
    const after = results.map(({ raisedAfter }) =>
      typeof raisedAfter === 'object' ? raisedAfter?.ofLoad : raisedAfter,
    );
    expect(
      after.filter((strokes) => !(typeof strokes === 'number' && strokes <= 6)),
      rigTable(results),
    ).toEqual([]);
  });

  test('the current that holds the motor between its movements is none of its movement, and no zero', () => {
    const wide = readRecordings(folder, 2.9).map(measured);
    readRecordings(folder).forEach((stroke, i) => {
      const { offsetAmps, runningAmps, durationS } = wide[i];
      expect(offsetAmps).toBeNull();
      expect(Math.abs(runningAmps / measured(stroke).runningAmps - 1)).toBeLessThan(0.025);
      // The set point moves for five seconds; the drive still settles for a while after some of its ways out.
      expect(durationS).toBeGreaterThan(4.7);
      expect(durationS).toBeLessThan(5.8);
    });
  });

  test('a run that is sent whole as CSV is cut into its strokes, the way out after a way back without a rest too', () => {
    for (const { file, csv, strokes } of readRuns(folder)) {
      const { timesS, ranges } = readRecording(csv, { roomId: 'rig', key: file });
      expect(ranges, file).toHaveLength(strokes.length);
      ranges.forEach(({ from, to }, i) => {
        expect(timesS[from]).toBeLessThan(strokes[i].startS + 0.25);
        expect(timesS[to - 1]).toBeGreaterThan(strokes[i].endS - 0.25);
        if (i > 0) expect(timesS[from]).toBeGreaterThan(strokes[i - 1].endS - 0.25);
      });
    }
  });

  test('its directions are asked for, as its current has one sign both ways, and taken one for each stroke', async () => {
    const token = await service.signIn();
    const [{ file, csv, strokes }] = readRuns(folder);
    const coach = await service.as(token, 'POST', '/coaches', { name: 'Rig, whole runs' });
    const room = await service.as(token, 'POST', `/coaches/${coach.body.id}/rooms`, {
      name: 'Rig',
      drive: 'other',
      sides: ['main'],
    });
    const send = async (direction: string) => {
      const query = new URLSearchParams({
        roomId: room.body.id,
        key: file,
        startedAt: '2026-03-02T08:00:00Z',
      });
      if (direction !== '') query.set('direction', direction);
      return service.request('POST', `/strokes?${query}`, {
        token,
        body: csv,
        headers: { 'content-type': 'text/csv' },
      });
    };
    const unsaid = await send('');
    expect(unsaid.status).toBe(422);
    expect(unsaid.body.errors[0].pointer).toBe('/direction');
    expect(unsaid.body.errors[0].detail).toContain('10 strokes');
    const unfit = await send('extend,retract');
    expect(unfit.status).toBe(422);
    expect(unfit.body.errors[0].detail).toContain('2 directions are given, but 10 strokes were found');
    const said = strokes.map(({ direction }) => direction);
    const sent = await send(said.join(','));
    const ids = sent.body.results.map(({ strokeId }: { strokeId: string }) => strokeId);
    expect(ids).toHaveLength(10);
    const kept = await Promise.all(ids.map((id: string) => service.as(token, 'GET', `/strokes/${id}`)));
    expect(kept.map((stroke) => stroke.body.direction)).toEqual(said);
  });
});

const RIG_ROOM: RoomDescription = {
  drive: 'other',
  sides: ['main'],
  travelMetres: 0.12,
  gearTeeth: null,
  rackPitchMm: null,
  ratedAmps: null,
  nominalVolts: 12,
  positiveDirection: 'extend',
};

function measured({ direction, amps }: RigStroke) {
  const side = {
    side: 'main',
    timesS: Float64Array.from(amps, (_, i) => i / RIG_RATE_HZ),
    amps: Float64Array.from(amps),
  };
  const analysis = measureStroke({ direction, sides: [side], supply: null, ambientC: null }, RIG_ROOM);
  if (analysis.status !== 'done') throw new TypeError(analysis.reason);
  return analysis.sides.main;
}
