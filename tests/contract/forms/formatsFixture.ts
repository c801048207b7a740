import type { Answer } from '../../support/request.ts';
import type { TestService } from '../../support/service.ts';
import type { Fleet } from '../strokes/strokeFixture.ts';

/** Sends a body of any form as the fleet's logger. */
export function sendAs(
  service: TestService,
  fleet: Fleet,
  type: string,
  body: Uint8Array | string,
  query: Readonly<Record<string, string>> = {},
): Promise<Answer> {
  const search = new URLSearchParams(query).toString();
  return service.request('POST', `/strokes${search === '' ? '' : `?${search}`}`, {
    token: fleet.loggerToken,
    body,
    headers: { 'content-type': type },
  });
}

export async function traceOf(service: TestService, fleet: Fleet, strokeId: string) {
  return (await service.as(fleet.token, 'GET', `/strokes/${strokeId}/trace`)).body;
}

export async function strokeOf(service: TestService, fleet: Fleet, strokeId: string) {
  return (await service.as(fleet.token, 'GET', `/strokes/${strokeId}`)).body;
}

export async function countStrokes(service: TestService): Promise<number> {
  const { rows } = await service.pool.query('select count(*)::integer as n from strokes');
  return rows[0].n;
}

/** Amperes of a recording at 10 Hz: rest, then a drive of `seconds` at `amps`, and so on, rest at the end. */
export function recording(
  parts: readonly (readonly [restS: number, driveS: number, amps: number])[],
): number[] {
  const samples: number[] = [];
  for (const [restS, driveS, amps] of [...parts, [3, 0, 0] as const]) {
    for (let i = 0; i < restS * 10; i++) samples.push(0.02);
    for (let i = 0; i < driveS * 10; i++) samples.push(i < 2 ? 2.5 * amps : amps);
  }
  return samples;
}
