import { z } from 'zod';
import { Coach } from '../../schemas/coach.ts';
import { Id, Time } from '../../schemas/common.ts';
import { Logger } from '../../schemas/logger.ts';
import { Room } from '../../schemas/room.ts';
import { Service } from '../../schemas/service.ts';

/** What the export's own README.txt says; kept beside the schemas below, which say the same to the program. */
export const README = `An export of slide-room records: gzip-compressed tar, JSON in UTF-8, CSV as in RFC 4180.

export.json                                  what was exported, and when
coaches/<id>/coach.json                      one motorhome or trailer
coaches/<id>/loggers.json                    what recorded on it; tokens are not exported
coaches/<id>/rooms/<id>/room.json            one slide room
coaches/<id>/rooms/<id>/services.json        work done on it
coaches/<id>/rooms/<id>/strokes-<n>.json     its strokes with every sample, oldest first: amperes, volts, degrees
                                             Celsius; each as "sent" (the form that POST /api/v1/strokes takes)
                                             beside its id, who sent it, when it was received
                                             and where it stands in the room's history;
                                             those whose samples were removed are in measures.csv alone
coaches/<id>/rooms/<id>/measures.csv         what was measured of each stroke and side, SI units
coaches/<id>/rooms/<id>/warnings.json        what was warned of

Times are RFC 3339 in UTC. "slideload import" reads all of it but measures.csv and warnings.json, which are made anew
from the strokes.
`;

export const EXPORT_VERSION = 1;

export const ExportHead = z.strictObject({
  format: z.literal('slideload-export'),
  version: z.literal(EXPORT_VERSION, { error: 'is of another version than this program reads' }),
  exportedAt: Time,
  account: z.string(),
  coaches: z.array(Id),
});
export type ExportHead = z.infer<typeof ExportHead>;

const ExportedLoggers = z.array(Logger);
const ExportedServices = z.array(Service);

/** `sent` is checked by the decoder that every stroke goes through. */
export const ExportedStroke = z.strictObject({
  id: Id,
  senderId: Id,
  loggerId: Id.nullable(),
  receivedAt: Time,
  placedAt: Time,
  placedBy: z.enum(['sender', 'arrival', 'person']),
  excluded: z.boolean(),
  note: z.string().nullable(),
  sent: z.unknown(),
});
const ExportedStrokes = z.array(ExportedStroke);
export type ExportedStroke = z.infer<typeof ExportedStroke>;

export const EXPORTED = {
  coach: Coach,
  loggers: ExportedLoggers,
  room: Room,
  services: ExportedServices,
  strokes: ExportedStrokes,
} as const;

/** What an entry of the archive holds, by its name; null for what is not read back. */
export function kindOf(name: string): keyof typeof EXPORTED | null {
  const match = /^coaches\/[0-9a-f-]+\/(?:rooms\/[0-9a-f-]+\/)?([a-z]+)(?:-\d+)?\.json$/.exec(name);
  const kind = match?.[1] ?? '';
  // The compiler draws nothing from `in` about a string.
  return kind in EXPORTED ? (kind as keyof typeof EXPORTED) : null;
}
