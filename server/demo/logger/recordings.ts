import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { strokesOfCsv } from '../../../ingest/csv/strokesOfTable.ts';
import type { SentQuery } from '../../../ingest/forms/sentForm.ts';
import { healthyCondition } from '../simulator/condition.ts';
import { drawRoom } from '../simulator/drawRoom.ts';
import { simulateStroke } from '../simulator/simulateStroke.ts';
import { asJson, type OutgoingStroke } from './outgoingStroke.ts';

const MINUTE_MS = 60_000;

/** The strokes of a CSV recording. The same file gives the same keys, so that playing it twice stores it once. */
export async function playCsv(path: string, said: SentQuery): Promise<OutgoingStroke[]> {
  const query = { ...said, key: said.key ?? basename(path) };
  const { strokes } = strokesOfCsv(await readFile(path, 'utf8'), query);
  return (Array.isArray(strokes) ? strokes : [strokes]).map(asJson);
}

/** Strokes of an invented room, out and in by turns, the last of them a minute ago. */
export function simulate(count: number, roomId: string, sides: readonly string[]): OutgoingStroke[] {
  const room = drawRoom(1, { sides, ...(sides.length > 1 ? { drive: 'in-wall' } : {}) });
  const now = Date.now();
  return Array.from({ length: count }, (_, i) => {
    const direction = i % 2 === 0 ? 'extend' : 'retract';
    const { stroke } = simulateStroke(room, healthyCondition(room, direction), i + 1);
    const startedAt = new Date(now - (count - i) * MINUTE_MS).toISOString();
    return asJson({ ...stroke, startedAt, direction, key: randomUUID(), roomId });
  });
}
