import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ChildService, startChild } from '../../support/childService.ts';
import { type Answer, sendRequest } from '../../support/request.ts';
import { mountSmallDisk } from '../../support/smallDisk.ts';
import { type Fleet, newFleet, send, strokeBody } from '../strokes/strokeFixture.ts';
import {
  ACKNOWLEDGED_BEFORE,
  ADMIN,
  askedAt,
  STROKES_A_KILL,
  signInAsAdmin,
  startLoad,
} from './durabilityFixture.ts';

/** For a Postgres as small as it comes, and some of its log. */
const MEBIBYTES = 256;
const TIMES_FULL = 2;
/** Enough to run out of the room inside the files that are there. */
const MOST_STROKES = 2000;
const STROKES_A_DAY = 100;

const disk = mountSmallDisk(MEBIBYTES);
const title = disk
  ? 'a disk that is really full'
  : 'a disk that is really full (skipped: no file system can be mounted here; see the injected one in databaseTrouble)';
if (disk === null) console.warn(title);

describe.skipIf(disk === null)(title, () => {
  let service: ChildService;
  let url: string;

  beforeAll(async () => {
    service = startChild({ DATA_DIR: disk?.folder ?? '', ...ADMIN, LOG_LEVEL: 'silent' }, 'node');
    url = await service.ready;
  }, 300_000);
  afterAll(async () => {
    service?.child.kill('SIGTERM');
    await service?.exited;
    disk?.unmount();
  });

  /** Postgres may have ended with the disk, and be on its way back. */
  async function ready(): Promise<string> {
    while ((await sendRequest(url, 'GET', '/readyz')).status !== 200);
    return url;
  }

  async function newOwnFleet(): Promise<Fleet> {
    const asked = askedAt(url);
    return newFleet(asked, await signInAsAdmin(asked));
  }

  const fiveFrom = ({ roomId }: Fleet, from: number) =>
    [0, 1, 2, 3, 4].map((i) =>
      strokeBody(roomId, (from + i) / STROKES_A_DAY, 9, { key: `full ${from + i}` }),
    );

  /** Sends five strokes at a time until there is no room; answers how many went before, and the answer then. */
  async function sendUntilRefused(fleet: Fleet, from: number): Promise<{ sent: number; refusal: Answer }> {
    for (let sent = 0; sent < MOST_STROKES; sent += 5) {
      const answer = await send(askedAt(url), fleet.loggerToken, fiveFrom(fleet, from + sent));
      expect((await sendRequest(url, 'GET', '/healthz')).status).toBe(200);
      if (answer.status !== 200) return { sent, refusal: answer };
    }
    throw new Error('There was room for everything.');
  }

  /** As a logger does with what was refused. */
  async function sendUntilTaken(fleet: Fleet, from: number): Promise<void> {
    for (;;) {
      await ready();
      const { status, body } = await send(askedAt(url), fleet.loggerToken, fiveFrom(fleet, from));
      if (status === 200) {
        for (const { outcome } of body.results) expect(['stored', 'duplicate']).toContain(outcome);
        return;
      }
      expect(status).toBe(503);
    }
  }

  test(`${TIMES_FULL} times under load: 503, nothing half-stored, and all well once there is room`, {
    timeout: 900_000,
  }, async () => {
    const { load, expectAllKept } = await startLoad(url, ready);
    const own = await newOwnFleet();
    let kept = 0;
    for (let time = 1; time <= TIMES_FULL; time++) {
      load.allow(STROKES_A_KILL);
      await load.reach(load.count + ACKNOWLEDGED_BEFORE);
      disk?.fill();
      const { sent, refusal } = await sendUntilRefused(own, kept);
      expect([refusal.status, refusal.body?.type], refusal.text).toEqual([503, '/problems/unavailable']);
      expect(Number(refusal.headers.get('retry-after'))).toBeGreaterThan(0);
      disk?.empty();
      await sendUntilTaken(own, kept + sent);
      kept += sent + 5;
      await load.reach(time * STROKES_A_KILL);
    }
    await load.finish();
    const status = await askedAt(url).request('GET', `/rooms/${own.roomId}/status`, { token: own.token });
    expect(status.body.strokes).toBe(kept);
    await expectAllKept(askedAt(url));
    expect(service.child.exitCode).toBeNull();
  });
});
