import { useMemo } from 'preact/hooks';
import type { Room, Stroke } from '../api/types.ts';
import { numberMarks } from '../charts/drawn/marks.ts';
import { toldHere } from '../format.ts';
import { TravelChart } from '../stroke/TravelChart.tsx';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { RunningChart } from './RunningChart.tsx';
import type { RunningStroke } from './runningStroke.ts';

interface LiveProps {
  readonly room: Room;
  readonly running: readonly RunningStroke[];
  readonly finished: Stroke | null;
  /** Whether more of a running stroke can come in. */
  readonly live: boolean;
}

const NO_OTHERS: readonly Stroke[] = [];

/** What became of a stroke that was seen running: over its normal, along the travel. */
function Finished({ stroke, room }: { readonly stroke: Stroke; readonly room: Room }) {
  const say = words.live;
  const { analysis } = stroke;
  const done = analysis?.status === 'done' ? analysis : null;
  const marks = useMemo(() => (done === null ? [] : numberMarks(done, room.sides)), [done, room]);
  return (
    <section aria-labelledby="finished">
      <h2 id="finished">{say.finished}</h2>
      <p role="status">
        {analysis === null && strokeWords.pending}
        {analysis?.status === 'unusable' && `${strokeWords.unusable}: ${toldHere(analysis.reason)}`}
        {done !== null && say.finishedLead(words.doing[done.direction])}{' '}
        <a href={`/strokes/${stroke.id}`}>{say.open}</a>
      </p>
      {done !== null && (
        <TravelChart
          level={3}
          stroke={stroke}
          room={room}
          analysis={done}
          sides={room.sides}
          marks={marks}
          others={NO_OTHERS}
        />
      )}
    </section>
  );
}

/** A stroke as it runs, and then as it was. */
export function LiveSection({ room, running, finished, live }: LiveProps) {
  const say = words.live;
  return (
    <>
      {running.length > 0 && (
        <section aria-labelledby="running">
          <h2 id="running">{say.title}</h2>
          <div role="status">{!live && <p class="note">{say.lost}</p>}</div>
          {running.map((stroke) => (
            <div key={stroke.strokeId}>
              <p class="unseen" role="status">
                {say.begun(words.directions[stroke.direction ?? 'unknown'])}
              </p>
              <RunningChart stroke={stroke} room={room} />
            </div>
          ))}
        </section>
      )}
      {finished !== null && <Finished key={finished.id} stroke={finished} room={room} />}
    </>
  );
}
