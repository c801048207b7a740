import type { DecodeError } from '../../ingest/decodeError.ts';
import { earlierStrokes } from '../../ingest/earlierStrokes.ts';
import type { GroupCommit } from '../../ingest/groupCommit.ts';
import { decodeEach, whyNone } from '../../ingest/json/strokes.ts';
import type { Queries } from '../../ingest/queries.ts';
import { prepareStroke, type Sender, type StoreOutcome } from '../../ingest/storeStrokes.ts';
import type { IncomingStroke } from '../../ingest/stroke.ts';
import { type Caller, callerId, STAFF } from '../access/scopes/caller.ts';
import { visitsOf } from '../access/scopes/scope.ts';
import { problemBody } from '../problems.ts';
import type { StrokeOutcome } from '../schemas/stroke.ts';

/** Where strokes go, and where the caller's earlier ones are looked for. */
interface StrokeStore {
  readonly store: GroupCommit;
  readonly pool: Queries;
}

/**
 * Reads the strokes of a body, stores those that could be read, and says what became of each, in the order sent. The
 * problem of one starts its pointers at that stroke, so that the same fault is the same problem wherever it stands. A
 * key that was sent before is a duplicate, whatever stands beside it now. Throws `DecodeError` where there is neither.
 */
export async function sendStrokes(
  { store, pool }: StrokeStore,
  caller: Caller,
  body: unknown,
): Promise<StrokeOutcome[]> {
  const decoded = decodeEach(body);
  const strokes = decoded.flatMap(({ stroke }) => (stroke ? [stroke] : []));
  const known = await earlierByKey(
    pool,
    caller,
    decoded.flatMap((one) => (one.stroke === null && one.key !== null ? [one.key] : [])),
  );
  if (strokes.length === 0 && known.size === 0) throw whyNone(decoded);
  const outcomes = strokes.length === 0 ? [] : await storeAll(store, caller, strokes);
  let next = 0;
  return decoded.map((one, index) => {
    if (one.stroke !== null) {
      const answered = answer(one.stroke, outcomes[next++]);
      if (answered.strokeId !== null) known.set(one.stroke.key, answered.strokeId);
      return answered;
    }
    const strokeId = one.key === null ? undefined : known.get(one.key);
    if (strokeId !== undefined) return { key: one.key, strokeId, outcome: 'duplicate' };
    return rejected(one.key, withinStroke(one.error.faults, Array.isArray(body) ? `/${index}` : ''));
  });
}

/** The ids of the strokes that the caller sent under these keys, wherever it sends to. */
async function earlierByKey(
  pool: Queries,
  caller: Caller,
  keys: readonly string[],
): Promise<Map<string, string>> {
  if (keys.length === 0) return new Map();
  const asked = sendersOf(caller).flatMap(({ accountId, senderId }) =>
    keys.map((key) => ({ accountId, senderId, key })),
  );
  const found = await earlierStrokes(pool, asked);
  return new Map([...found].map(([place, id]) => [asked[place].key, id]));
}

/** Tries each place that the caller sends to in turn, with the strokes whose room was in none before. */
async function storeAll(
  store: GroupCommit,
  caller: Caller,
  strokes: readonly IncomingStroke[],
): Promise<StoreOutcome[]> {
  const outcomes = strokes.map((): StoreOutcome => ({ outcome: 'unknown-room' }));
  for (const sender of sendersOf(caller)) {
    const left = outcomes.flatMap(({ outcome }, i) => (outcome === 'unknown-room' ? [i] : []));
    if (left.length === 0) break;
    const stored = await store.store(left.map((i) => prepareStroke(sender, strokes[i])));
    for (const [place, i] of left.entries()) outcomes[i] = stored[place];
  }
  return outcomes;
}

/** A logger sends to its coach; a person to its account, and to each coach that it visits, where it is of the staff. */
export function sendersOf(caller: Caller): Sender[] {
  const { accountId } = caller;
  const senderId = callerId(caller);
  if (caller.kind === 'logger')
    return [{ accountId, senderId, loggerId: caller.loggerId, coachId: caller.coachId }];
  const places = [{ accountId, coachId: null, role: caller.role }, ...visitsOf(caller)];
  return places
    .filter(({ role }) => STAFF.some((each) => each === role))
    .map((place) => ({ accountId: place.accountId, senderId, loggerId: null, coachId: place.coachId }));
}

function answer(stroke: IncomingStroke, outcome: StoreOutcome): StrokeOutcome {
  const { key } = stroke;
  switch (outcome.outcome) {
    case 'stored':
    case 'duplicate':
      return { key, strokeId: outcome.strokeId, outcome: outcome.outcome };
    case 'unknown-room':
      return rejected(key, [{ pointer: '/roomId', detail: 'There is no such room.' }]);
    case 'unknown-sides':
      return rejected(
        key,
        stroke.sides.flatMap(({ side }, i) =>
          outcome.sides.includes(side)
            ? [{ pointer: `/sides/${i}/side`, detail: 'The room has no such side.' }]
            : [],
        ),
      );
  }
}

function withinStroke(faults: DecodeError['faults'], place: string): DecodeError['faults'] {
  return faults.map(({ pointer, detail }) => ({ pointer: pointer.slice(place.length), detail }));
}

function rejected(key: string | null, faults: DecodeError['faults']): StrokeOutcome {
  const problem = problemBody('invalid-field', faults[0]?.detail ?? 'The stroke cannot be stored.', faults);
  return { key, strokeId: null, outcome: 'rejected', problem };
}
