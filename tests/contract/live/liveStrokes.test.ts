import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { tendLiveStrokes } from '../../../ingest/live/tend.ts';
import { serviceOfTests } from '../../support/serviceOfTests.ts';
import { type Fleet, fleetOfTests, newFleet, send, settled, strokeBody } from '../strokes/strokeFixture.ts';
import { type LiveStroke, linksOf, liveStroke, sayAll, sayPieces, sidesOf } from './liveFixture.ts';

const TAKEN_OVER = 4409;

const service = serviceOfTests();
const fleet = fleetOfTests(service);

const openFor = linksOf(() => service);
const open = (of: string | null = fleet.loggerToken, headers = {}) => openFor(of, headers);

/** All strokes that a logger sent of one key. */
async function stored(key: string, of: Fleet = fleet) {
  const { rows } = await service.pool.query<{ id: string }>(
    'select id from strokes where key = $1 and sender_id = $2',
    [key, of.loggerId],
  );
  return rows.map(({ id }) => id);
}

describe('a stroke sent as it happens', () => {
  test('is acknowledged piece by piece, stored once, and reads as it was sent', async () => {
    const stroke = liveStroke(fleet);
    const strokeId = await sayAll(await open(), stroke);
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual(stroke.sides);
    await settled(service, fleet.token, fleet.roomId);
    const { body } = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(body).toMatchObject({ key: stroke.key, loggerId: fleet.loggerId, analysis: { status: 'done' } });
  });

  test('is the same stroke as one sent whole', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 3);
    const strokeId = await sayAll(link, stroke);
    const whole = strokeBody(fleet.roomId, 3, 9, { key: stroke.key });
    const answer = await send(service, fleet.loggerToken, whole);
    expect(answer.body.results).toEqual([{ key: stroke.key, strokeId, outcome: 'duplicate' }]);
    // And the other way round: one that is stored already needs no samples.
    const other = liveStroke(fleet, 4);
    const [{ strokeId: first }] = (
      await send(service, fleet.loggerToken, strokeBody(fleet.roomId, 4, 9, { key: other.key }))
    ).body.results;
    link.say(other.begin);
    expect(await link.next()).toMatchObject({ type: 'stored', key: other.key, strokeId: first });
  });

  test('may have gaps, a supply, an ambient temperature, whole milliamps and counts', async () => {
    const link = await open();
    const key = randomUUID();
    link.say({
      type: 'begin',
      key,
      roomId: fleet.roomId,
      startedAt: '2026-05-02T18:20:11.25+02:00',
      sides: [
        { side: 'front', rateHz: 50 },
        { side: 'rear', rateHz: 20 },
      ],
      supply: { rateHz: 10 },
      ambientC: -3.5,
    });
    link.say({ type: 'samples', key, seq: 0, side: 'front', amps: [0.02, null, 9.1] });
    link.say({ type: 'samples', key, seq: 1, side: 'rear', milliamps: [20, 14800] });
    link.say({ type: 'samples', key, seq: 2, volts: [12.9] });
    link.say({ type: 'samples', key, seq: 3, side: 'rear', counts: [-3], ampsPerCount: 0.5 });
    link.say({ type: 'samples', key, seq: 4, volts: [12.1] });
    link.say({ type: 'end', key });
    const { strokeId } = await link.next('stored');
    const trace = await service.as(fleet.token, 'GET', `/strokes/${strokeId}/trace`);
    expect(trace.body).toEqual({
      sides: [
        { side: 'front', rateHz: 50, amps: [0.02, null, 9.1] },
        { side: 'rear', rateHz: 20, amps: [0.02, 14.8, -1.5] },
      ],
      supply: { rateHz: 10, volts: [12.9, 12.1] },
      ambientC: -3.5,
    });
    // What the current's sign tells is known once the stroke is analysed.
    await settled(service, fleet.token, fleet.roomId);
    const { body } = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(body).toMatchObject({ startedAt: '2026-05-02T16:20:11.250Z', direction: 'extend' });
  });

  test('speaks CBOR where it is spoken to in CBOR', async () => {
    const link = await open();
    const key = randomUUID();
    link.sayCbor({
      type: 'begin',
      key,
      roomId: fleet.roomId,
      direction: 'extend',
      startedAt: '2026-05-02T16:20:11Z',
      sides: [{ side: 'rear', rateHz: 50 }],
    });
    link.sayCbor({ type: 'samples', key, seq: 0, side: 'rear', amps: Float64Array.of(1, Number.NaN, 3) });
    expect(await link.next()).toEqual({ type: 'ack', key, seq: 0, form: 'cbor' });
    link.say({ type: 'samples', key, seq: 1, side: 'rear', amps: [4] });
    expect(await link.next()).toEqual({ type: 'ack', key, seq: 1, form: 'json' });
    link.sayCbor({ type: 'end', key });
    const { strokeId, form } = await link.next('stored');
    expect(form).toBe('cbor');
    const [side] = await sidesOf(service, fleet.token, strokeId);
    expect(side.amps).toEqual([1, null, 3, 4]);
  });

  test('leaves out a side that nothing came of', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 6);
    link.say(stroke.begin);
    const front = stroke.pieces
      .filter(({ side }) => side === 'front')
      .map((piece, seq) => ({ ...piece, seq }));
    await sayPieces(link, front);
    link.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await link.next('stored')).strokeId)).toEqual([
      stroke.sides[0],
    ]);
  });

  test('is stored with what there is where it ends after a single sample', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 7);
    link.say(stroke.begin);
    await sayPieces(link, [{ ...stroke.pieces[0], amps: [4.25] }]);
    link.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await link.next('stored')).strokeId)).toEqual([
      { side: 'front', rateHz: 50, amps: [4.25, null] },
    ]);
  });

  test('several at once on one link do not mix', async () => {
    const link = await open();
    const strokes = [liveStroke(fleet, 10), liveStroke(fleet, 12)];
    for (const { begin } of strokes) link.say(begin);
    for (const [i, piece] of strokes[0].pieces.entries()) {
      link.say(piece);
      link.say(strokes[1].pieces[i]);
    }
    for (const { end } of strokes) link.say(end);
    for (const stroke of strokes) {
      const { key, strokeId } = await link.next('stored');
      expect(key).toBe(stroke.key);
      expect(await sidesOf(service, fleet.token, strokeId)).toEqual(stroke.sides);
    }
  });
});

describe('a link that drops', () => {
  test('is taken up where the acknowledgements ended, as often as it takes', async () => {
    const stroke = liveStroke(fleet, 20);
    let nextSeq = 0;
    for (const upTo of [0, 7, 8, 31]) {
      const link = await open();
      link.say(stroke.begin);
      if (nextSeq > 0 || upTo > 0) {
        const expected = upTo === 7 ? 0 : nextSeq;
        expect(await link.next()).toMatchObject({ type: 'resume', key: stroke.key, nextSeq: expected });
      }
      await sayPieces(link, stroke.pieces.slice(nextSeq, upTo));
      // Begun for certain before it drops.
      link.say({ type: 'samples', key: stroke.key, seq: upTo + 5, side: 'front', amps: [1] });
      expect(await link.next('problem')).toMatchObject({ nextSeq: upTo, status: 409 });
      nextSeq = upTo;
      await link.drop();
    }
    const link = await open();
    link.say(stroke.begin);
    expect((await link.next('resume')).nextSeq).toBe(31);
    await sayPieces(link, stroke.pieces.slice(31));
    link.say(stroke.end);
    const { strokeId } = await link.next('stored');
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual(stroke.sides);
    expect(await stored(stroke.key)).toEqual([strokeId]);
  });

  test('whose logger never heard that it was stored is told again', async () => {
    const stroke = liveStroke(fleet, 22);
    const link = await open();
    const strokeId = await sayAll(link, stroke);
    await link.drop();
    const again = await open();
    again.say(stroke.begin);
    expect(await again.next()).toMatchObject({ type: 'stored', key: stroke.key, strokeId });
    expect(await stored(stroke.key)).toEqual([strokeId]);
  });

  test('that is stored already is said to be so whatever is still said of it', async () => {
    const stroke = liveStroke(fleet, 24);
    const link = await open();
    const strokeId = await sayAll(link, stroke);
    await link.drop();
    const again = await open();
    for (const message of [stroke.begin, ...stroke.pieces.slice(0, 2), stroke.end, stroke.end]) {
      again.say(message);
      expect(await again.next()).toEqual({ type: 'stored', key: stroke.key, strokeId, form: 'json' });
    }
    again.say({ ...stroke.end, key: 'never begun' });
    expect(await again.next('problem')).toMatchObject({ status: 409, key: 'never begun' });
    expect(await stored(stroke.key)).toEqual([strokeId]);
  });

  test('a piece sent again is acknowledged again, and the first one stands', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 24);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 3));
    link.say({ ...stroke.pieces[1], amps: [777] });
    expect(await link.next()).toMatchObject({ type: 'ack', seq: 1 });
    await sayPieces(link, stroke.pieces.slice(3));
    link.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await link.next('stored')).strokeId)).toEqual(stroke.sides);
  });

  test('a gap is refused with the piece that comes next, and the stroke goes on', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 26);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 2));
    link.say(stroke.pieces[4]);
    expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 409, nextSeq: 2 });
    await sayPieces(link, stroke.pieces.slice(2));
    link.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await link.next('stored')).strokeId)).toEqual(stroke.sides);
  });
});

describe('one key on several links', () => {
  test('the later link takes over, the earlier is told and dropped', async () => {
    const stroke = liveStroke(fleet, 30);
    const [earlier, later] = [await open(), await open()];
    earlier.say(stroke.begin);
    await sayPieces(earlier, stroke.pieces.slice(0, 5));
    later.say(stroke.begin);
    expect((await later.next('resume')).nextSeq).toBe(5);
    expect(await earlier.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 409 });
    expect(await earlier.closed).toBe(TAKEN_OVER);
    await sayPieces(later, stroke.pieces.slice(5));
    later.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await later.next('stored')).strokeId)).toEqual(stroke.sides);
  });

  test('a link whose stroke went to another process learns it with its next piece', async () => {
    const stroke = liveStroke(fleet, 32);
    const link = await open();
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 2));
    await service.pool.query('update live_strokes set link_id = $1 where key = $2', [
      randomUUID(),
      stroke.key,
    ]);
    link.say(stroke.pieces[2]);
    expect(await link.next()).toMatchObject({ type: 'problem', status: 409 });
    expect(await link.closed).toBe(TAKEN_OVER);
  });

  test('two loggers with one key are apart', async () => {
    const logger = await service.as(fleet.token, 'POST', `/coaches/${fleet.coachId}/loggers`, {
      name: 'Second board',
      sensor: 'shunt',
    });
    const stroke = liveStroke(fleet, 34);
    const other: LiveStroke = liveStroke(fleet, 37, stroke.key);
    const both = [await open(), await open(logger.body.token)];
    both[0].say(stroke.begin);
    both[1].say(other.begin);
    for (const i of stroke.pieces.keys()) {
      await sayPieces(both[0], [stroke.pieces[i]]);
      await sayPieces(both[1], [other.pieces[i]]);
    }
    both[0].say(stroke.end);
    both[1].say(other.end);
    const ids = [(await both[0].next('stored')).strokeId, (await both[1].next('stored')).strokeId];
    expect(ids[0]).not.toBe(ids[1]);
    expect(await sidesOf(service, fleet.token, ids[0])).toEqual(stroke.sides);
    expect(await sidesOf(service, fleet.token, ids[1])).toEqual(other.sides);
  });

  test('another beginning of an unfinished stroke is refused, the first one stands', async () => {
    const link = await open();
    const stroke = liveStroke(fleet, 36);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 1));
    link.say({ ...stroke.begin, direction: 'retract' });
    expect(await link.next()).toMatchObject({ type: 'problem', key: stroke.key, status: 409 });
    await sayPieces(link, stroke.pieces.slice(1));
    link.say(stroke.end);
    expect(await sidesOf(service, fleet.token, (await link.next('stored')).strokeId)).toEqual(stroke.sides);
  });

  test('many links begin the same new stroke at once, and one of them has it', async () => {
    const stroke = liveStroke(fleet, 38);
    const all = await Promise.all([open(), open(), open(), open()]);
    for (const link of all) link.say(stroke.begin);
    const codes = await Promise.race([
      Promise.all(all.slice(0, 3).map((link) => link.closed)),
      Promise.all(all.slice(1).map((link) => link.closed)),
      Promise.all([all[0], ...all.slice(2)].map((link) => link.closed)),
      Promise.all([...all.slice(0, 2), all[3]].map((link) => link.closed)),
    ]);
    expect(codes).toEqual([TAKEN_OVER, TAKEN_OVER, TAKEN_OVER]);
    const { rows } = await service.pool.query('select id from live_strokes where key = $1', [stroke.key]);
    expect(rows).toHaveLength(1);
  });

  test('a logger sends 64 strokes at once, each on a link of its own, and every one is stored', async () => {
    const mine = await newFleet(service, fleet.token);
    const links = await Promise.all(Array.from({ length: 64 }, () => open(mine.loggerToken)));
    const stored = await Promise.all(
      links.map((link, day) => {
        const stroke = liveStroke(mine, day);
        return sayAll(link, { ...stroke, pieces: stroke.pieces.slice(0, 2) });
      }),
    );
    expect(new Set(stored).size).toBe(64);
  });
});

describe('a sender that never comes back', () => {
  const agedBy = (key: string, interval: string) =>
    service.pool.query('update live_strokes set touched_at = now() - $2::interval where key = $1', [
      key,
      interval,
    ]);

  test('has its stroke kept for a week, then stored with what it has, unusable and readable', async () => {
    const coach = await newFleet(service, fleet.token);
    const stroke = liveStroke(coach, 40);
    const link = await open(coach.loggerToken);
    link.say(stroke.begin);
    await sayPieces(link, stroke.pieces.slice(0, 11));
    await link.drop();
    await agedBy(stroke.key, '6 days 23 hours');
    expect(await tendLiveStrokes(service.pool)).toBe(0);
    await agedBy(stroke.key, '7 days 1 minute');
    expect(await tendLiveStrokes(service.pool)).toBe(1);
    expect(await tendLiveStrokes(service.pool)).toBe(0);
    await settled(service, fleet.token, coach.roomId);
    const [strokeId] = await stored(stroke.key, coach);
    const { body } = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(body.analysis).toEqual({
      status: 'unusable',
      reason: expect.stringContaining('ended before the stroke did'),
      sides: {},
      share: null,
      lagS: null,
    });
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual([
      { ...stroke.sides[0], amps: stroke.sides[0].amps.slice(0, 150) },
      { ...stroke.sides[1], amps: stroke.sides[1].amps.slice(0, 125) },
    ]);
    const again = await open(coach.loggerToken);
    again.say(stroke.begin);
    expect(await again.next()).toMatchObject({ type: 'stored', strokeId });
    // Measuring the room anew changes nothing of that.
    await service.as(fleet.token, 'PATCH', `/rooms/${coach.roomId}`, { travelMetres: 0.9 });
    await settled(service, fleet.token, coach.roomId);
    const after = await service.as(fleet.token, 'GET', `/strokes/${strokeId}`);
    expect(after.body.analysis.status).toBe('unusable');
  });

  test('has nothing stored of it where nothing came, and no sample lost where one did', async () => {
    const coach = await newFleet(service, fleet.token);
    const [nothing, single] = [liveStroke(coach, 41), liveStroke(coach, 42)];
    const link = await open(coach.loggerToken);
    link.say(nothing.begin);
    link.say(single.begin);
    await sayPieces(link, [{ ...single.pieces[0], amps: [4.25] }]);
    await link.drop();
    for (const { key } of [nothing, single]) await agedBy(key, '8 days');
    expect(await tendLiveStrokes(service.pool)).toBe(1);
    expect(await stored(nothing.key, coach)).toEqual([]);
    const [strokeId] = await stored(single.key, coach);
    expect(await sidesOf(service, fleet.token, strokeId)).toEqual([
      { side: 'front', rateHz: 50, amps: [4.25, null] },
    ]);
    const { rows } = await service.pool.query('select id from live_strokes where logger_id = $1', [
      coach.loggerId,
    ]);
    expect(rows).toHaveLength(1);
    await service.pool.query("update live_strokes set stored_at = stored_at - interval '2 minutes'");
    await tendLiveStrokes(service.pool);
    const left = await service.pool.query('select stroke_id from live_pieces where stroke_id = $1', [
      strokeId,
    ]);
    expect(left.rows).toEqual([]);
  });
});
