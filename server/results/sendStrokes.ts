import type { z } from 'zod';
import { DecodeError } from '../../ingest/decodeError.ts';
import type { GroupCommit } from '../../ingest/groupCommit.ts';
import { type DecodedStroke, decodeStrokes } from '../../ingest/json/strokes.ts';
import { prepareStroke, type Sender, type StoreOutcome } from '../../ingest/storeStrokes.ts';
import type { IncomingStroke } from '../../ingest/stroke.ts';
import { type Caller, callerId } from '../access/caller.ts';
import { ProblemError, problemBody } from '../problems.ts';
import type { StrokeOutcome } from '../schemas/stroke.ts';

type Outcome = z.infer<typeof StrokeOutcome>;

/** Reads the strokes of a body, stores those that could be read, and says what became of each, in the order sent. */
export async function sendStrokes(store: GroupCommit, caller: Caller, body: unknown): Promise<Outcome[]> {
  const decoded = read(body);
  const sender = senderOf(caller);
  const outcomes = await store.store(
    decoded.flatMap(({ stroke }) => (stroke ? [prepareStroke(sender, stroke)] : [])),
  );
  let next = 0;
  return decoded.map((one, index) => {
    if (one.stroke === null) return unread(one.key, one.error);
    return answer(one.stroke, outcomes[next++], Array.isArray(body) ? `/${index}` : '');
  });
}

function read(body: unknown): DecodedStroke[] {
  try {
    return decodeStrokes(body);
  } catch (error) {
    if (!(error instanceof DecodeError)) throw error;
    throw new ProblemError('invalid-field', error.message, { errors: error.faults, cause: error });
  }
}

function senderOf(caller: Caller): Sender {
  return {
    accountId: caller.accountId,
    senderId: callerId(caller),
    loggerId: caller.kind === 'logger' ? caller.loggerId : null,
    coachId: caller.kind === 'logger' ? caller.coachId : null,
  };
}

function answer(stroke: IncomingStroke, outcome: StoreOutcome, pointer: string): Outcome {
  const { key } = stroke;
  switch (outcome.outcome) {
    case 'stored':
    case 'duplicate':
      return { key, strokeId: outcome.strokeId, outcome: outcome.outcome };
    case 'unknown-room':
      return rejected(key, [{ pointer: `${pointer}/roomId`, detail: 'There is no such room.' }]);
    case 'unknown-sides':
      return rejected(
        key,
        stroke.sides.flatMap(({ side }, i) =>
          outcome.sides.includes(side)
            ? [{ pointer: `${pointer}/sides/${i}/side`, detail: 'The room has no such side.' }]
            : [],
        ),
      );
  }
}

function unread(key: string | null, error: DecodeError): Outcome {
  return rejected(key, error.faults);
}

function rejected(key: string | null, faults: DecodeError['faults']): Outcome {
  const problem = problemBody('invalid-field', faults[0]?.detail ?? 'The stroke cannot be stored.', faults);
  return { key, strokeId: null, outcome: 'rejected', problem };
}
