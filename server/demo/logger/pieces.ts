import { ampsOf, type OutgoingStroke } from './outgoingStroke.ts';

/** One message of samples, and when its last sample was taken, seconds from the stroke's start. */
export interface Piece {
  readonly seq: number;
  readonly endsAtS: number;
  readonly message: object;
}

/** Samples of so long go in one message. */
const PIECE_S = 0.1;

/** Whether it can be sent as it happens: times of their own can be sent with a whole stroke only. */
export function isSteady({ sides, supply }: OutgoingStroke): boolean {
  return sides.every(({ rateHz }) => rateHz !== undefined) && (supply === undefined || supply.rateHz > 0);
}

export function beginOf({
  key,
  roomId,
  direction,
  startedAt,
  sides,
  supply,
  ambientC,
}: OutgoingStroke): object {
  const begun = sides.map(({ side, rateHz }) => ({ side, rateHz }));
  const more = { direction, supply: supply && { rateHz: supply.rateHz }, ambientC };
  return { type: 'begin', key, roomId, startedAt, sides: begun, ...JSON.parse(JSON.stringify(more)) };
}

/** The stroke in pieces, in the order in which they happen; the same however often it is asked. */
export function piecesOf({ key, sides, supply }: OutgoingStroke): Piece[] {
  const channels = sides.map((side) => ({
    rateHz: side.rateHz ?? 1,
    values: ampsOf(side),
    message: (amps: readonly (number | null)[]) => ({ side: side.side, amps }),
  }));
  const volts = supply && {
    rateHz: supply.rateHz,
    values: supply.volts,
    message: (values: readonly (number | null)[]) => ({ volts: values }),
  };
  return [...channels, ...(volts ? [volts] : [])]
    .flatMap(({ rateHz, values, message }) => {
      const length = Math.max(1, Math.round(PIECE_S * rateHz));
      return Array.from({ length: Math.ceil(values.length / length) }, (_, i) => ({
        endsAtS: Math.min(values.length, (i + 1) * length) / rateHz,
        message: message(values.slice(i * length, (i + 1) * length)),
      }));
    })
    .sort((one, other) => one.endsAtS - other.endsAtS)
    .map(({ endsAtS, message }, seq) => ({
      seq,
      endsAtS,
      message: { type: 'samples', key, seq, ...message },
    }));
}
