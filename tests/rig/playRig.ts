import { DIRECTIONS, type Direction } from '../../analysis/trace.ts';
import { addRoom, allAnalysed, ask, type RigRoom, type RigService, send } from './loggerClient.ts';
import { RIG_RATE_HZ, type RigStroke } from './recordings.ts';

/** The measures that a changed friction can show in, the one that the warning stands on first. */
export const RIG_MEASURES = ['runningAmps', 'runningAmpsP90', 'chargeAs', 'roughness'] as const;
export type RigMeasure = (typeof RIG_MEASURES)[number];

/** Normal runs up to this one are the baseline; those after it must stay within the limits. */
const LAST_BASELINE_RUN = 6;
const RUNS_APART_MS = 10 * 60_000;
const FIRST_RUN_MS = Date.parse('2026-03-02T08:00:00Z');

export type Part = 'baseline' | 'healthy' | 'faulty';

/** What the service said of one load's strokes in one direction. */
export interface RigResult {
  readonly loadKgf: number;
  readonly direction: Direction;
  readonly strokes: Readonly<Record<Part, number>>;
  /** All of them, by the rig's condition. */
  readonly strokeIds: Readonly<Record<RigStroke['condition'], readonly string[]>>;
  /** Strokes beyond the single-stroke limits, by measure. */
  readonly beyond: Readonly<Record<RigMeasure, { readonly healthy: number; readonly faulty: number }>>;
  /**
   * The faulty strokes of this load, and those of this direction among them, up to the one that raised `rising-draw`;
   * `false-alarm` where a healthy stroke raised it, null where nothing did.
   */
  readonly raisedAfter: { readonly ofLoad: number; readonly ofDirection: number } | 'false-alarm' | null;
}

interface SentStroke extends RigStroke {
  readonly strokeId: string;
  readonly part: Part;
}

/**
 * Plays the recordings into a service as loggers would, a room for each load: normal runs 1 to 6, normal runs 7 to 10,
 * then the runs without lubricant; and reads from its API what it made of them.
 */
export async function playRig(service: RigService, strokes: readonly RigStroke[]): Promise<RigResult[]> {
  const coach = await ask<{ id: string }>(service, 'POST', '/coaches', { name: 'Ball-screw rig' });
  const results: RigResult[] = [];
  for (const loadKgf of new Set(strokes.map((stroke) => stroke.loadKgf))) {
    const room = await addRoom(service, coach.id, loadKgf);
    const ofLoad = strokes.filter((stroke) => stroke.loadKgf === loadKgf);
    const sent = await play(service, room, ofLoad);
    await allAnalysed(service, room);
    for (const direction of DIRECTIONS) results.push(await readResult(service, room, sent, direction));
  }
  return results;
}

async function play(
  service: RigService,
  room: RigRoom,
  strokes: readonly RigStroke[],
): Promise<SentStroke[]> {
  const inOrder = [...strokes].sort(
    (a, b) => runNumber(a, strokes) - runNumber(b, strokes) || a.startS - b.startS,
  );
  const bodies = inOrder.map((stroke) => ({
    key: `${stroke.condition} run ${stroke.run} at ${stroke.startS} s`,
    direction: stroke.direction,
    startedAt: new Date(
      FIRST_RUN_MS + runNumber(stroke, strokes) * RUNS_APART_MS + 1000 * stroke.startS,
    ).toISOString(),
    sides: [{ side: 'main', rateHz: RIG_RATE_HZ, amps: stroke.amps }],
  }));
  const ids = await send(service, room, bodies);
  return inOrder.map((stroke, i) => ({ ...stroke, strokeId: ids[i], part: partOf(stroke) }));
}

/** The place of a stroke's run: the faulty ones come after all normal ones. */
function runNumber({ condition, run }: RigStroke, strokes: readonly RigStroke[]): number {
  if (condition === 'normal') return run;
  return (
    run + Math.max(0, ...strokes.filter((other) => other.condition === 'normal').map((other) => other.run))
  );
}

function partOf({ condition, run }: RigStroke): Part {
  if (condition !== 'normal') return 'faulty';
  return run <= LAST_BASELINE_RUN ? 'baseline' : 'healthy';
}

async function readResult(
  service: RigService,
  { roomId }: RigRoom,
  sent: readonly SentStroke[],
  direction: Direction,
): Promise<RigResult> {
  const own = sent.filter((stroke) => stroke.direction === direction);
  const count = (part: Part) => own.filter((stroke) => stroke.part === part).length;
  const idsOf = (condition: RigStroke['condition']) =>
    own.filter((stroke) => stroke.condition === condition).map((stroke) => stroke.strokeId);
  const beyond = async (measure: RigMeasure) => {
    const { points } = await ask<{ points: { strokeId: string; beyond: boolean | null }[] }>(
      service,
      'GET',
      `/rooms/${roomId}/trend?measure=${measure}&direction=${direction}&side=main`,
    );
    const ids = new Set(points.filter((point) => point.beyond === true).map((point) => point.strokeId));
    const counted = (part: Part) =>
      own.filter((stroke) => stroke.part === part && ids.has(stroke.strokeId)).length;
    return { healthy: counted('healthy'), faulty: counted('faulty') };
  };
  return {
    loadKgf: own[0].loadKgf,
    direction,
    strokes: { baseline: count('baseline'), healthy: count('healthy'), faulty: count('faulty') },
    strokeIds: { normal: idsOf('normal'), lackLubrication1: idsOf('lackLubrication1') },
    beyond: {
      runningAmps: await beyond('runningAmps'),
      runningAmpsP90: await beyond('runningAmpsP90'),
      chargeAs: await beyond('chargeAs'),
      roughness: await beyond('roughness'),
    },
    raisedAfter: await raisedAfter(service, roomId, sent, direction),
  };
}

async function raisedAfter(
  service: RigService,
  roomId: string,
  sent: readonly SentStroke[],
  direction: Direction,
): Promise<RigResult['raisedAfter']> {
  const { items } = await ask<{ items: { kind: string; firstStrokeId: string }[] }>(
    service,
    'GET',
    `/rooms/${roomId}/warnings?state=all`,
  );
  // Newest first: the last of them is the one that was raised first.
  const first = items.filter((warning) => warning.kind === 'rising-draw').at(-1);
  if (first === undefined) return null;
  const at = sent.findIndex((stroke) => stroke.strokeId === first.firstStrokeId);
  if (sent[at]?.part !== 'faulty') return 'false-alarm';
  const faulty = sent.slice(0, at + 1).filter((stroke) => stroke.part === 'faulty');
  return { ofLoad: faulty.length, ofDirection: faulty.filter((s) => s.direction === direction).length };
}
