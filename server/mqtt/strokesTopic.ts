import { isUuid } from '../../ingest/uuid.ts';

export const STROKES_TOPIC = 'slideload/+/strokes';
/** Several processes take turns at the messages; not every broker has such subscriptions. */
export const SHARED_STROKES_TOPIC = `$share/slideload/${STROKES_TOPIC}`;

const TOPIC = /^slideload\/([^/]+)\/strokes$/;

/** The logger that a topic names; null where it names none. */
export function loggerOfTopic(topic: string): string | null {
  const [, id] = TOPIC.exec(topic) ?? [];
  return id !== undefined && isUuid(id) ? id.toLowerCase() : null;
}

export function resultsTopic(loggerId: string): string {
  return `slideload/${loggerId}/results`;
}
