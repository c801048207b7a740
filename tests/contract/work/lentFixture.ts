import type { TestService } from '../../support/service.ts';
import { type Fleet, statusOnce, strokeBody } from '../strokes/strokeFixture.ts';

/** A room of a coach of some model, with a logger; what differs from the usual one is given. */
export type RoomOfModel = Fleet;

interface Wanted {
  readonly model?: string | null;
  readonly name?: string;
  readonly drive?: string;
  readonly sides?: readonly string[];
}

export async function newRoomOf(service: TestService, token: string, wanted: Wanted): Promise<RoomOfModel> {
  const { model = null, name = 'Dinette', drive = 'in-wall', sides = ['front', 'rear'] } = wanted;
  const create = async (path: string, body: object) => {
    const answer = await service.as(token, 'POST', path, body);
    if (answer.status !== 201) throw new Error(`${path} answered ${answer.status}: ${answer.text}`);
    return answer.body;
  };
  const { id: coachId } = await create('/coaches', { name: 'Harrow', model });
  const { id: roomId } = await create(`/coaches/${coachId}/rooms`, { name, drive, sides });
  const logger = await create(`/coaches/${coachId}/loggers`, { name: 'Board', sensor: 'clamp' });
  return { token, coachId, roomId, loggerId: logger.id, loggerToken: logger.token };
}

/** Strokes of the days from `from` on; `times` of a side multiplies what it draws. */
export function strokesOf(
  { roomId }: Pick<RoomOfModel, 'roomId'>,
  from: number,
  count: number,
  amps = 9,
  times: Readonly<Record<string, number>> = {},
) {
  return Array.from({ length: count }, (_, i) => {
    const stroke = strokeBody(roomId, from + i, amps);
    const sides = stroke.sides.map((side) => ({
      ...side,
      amps: side.amps.map((value) => Math.round(1000 * value * (times[side.side] ?? 1)) / 1000),
    }));
    return { ...stroke, sides };
  });
}

interface Trend {
  readonly points: readonly {
    readonly expected: number | null;
    readonly adjusted: number | null;
    readonly beyond: boolean | null;
  }[];
  readonly limits: { readonly lower: number; readonly centre: number; readonly upper: number } | null;
}

export async function trendOf(service: TestService, { roomId, token }: RoomOfModel): Promise<Trend> {
  const path = `/rooms/${roomId}/trend?measure=runningAmps&direction=extend&side=front`;
  const { status, body, text } = await service.as(token, 'GET', path);
  if (status !== 200) throw new Error(`The trend answered ${status}: ${text}`);
  return body;
}

/** Waits until so many rooms lend to this one and nothing is pending. */
export async function lentTo(
  service: TestService,
  { token, roomId }: RoomOfModel,
  rooms: number,
): Promise<void> {
  await statusOnce(
    service,
    token,
    roomId,
    ({ pending, borrowed }) => pending === 0 && (borrowed?.rooms ?? 0) === rooms,
  );
}
