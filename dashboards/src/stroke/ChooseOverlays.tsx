import { useState } from 'preact/hooks';
import type { CallProblem } from '../api/client.ts';
import type { Room, Stroke } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { More } from '../components/coming/More.tsx';
import { Failure, Loaded } from '../components/coming/states.tsx';
import { Tick } from '../components/sending/Tick.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { quantity } from '../format.ts';
import { replaceAddress } from '../router.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { LETTERS, MOST_OVERLAYS, withOverlays } from './overlayChoice.ts';

interface ChooseProps {
  readonly room: Room;
  readonly stroke: Stroke;
  readonly chosen: readonly string[];
  /** Why some of them could not be laid over it, and how to ask for them again. */
  readonly problem: CallProblem | null;
  readonly retry: () => void;
}

const AT_ONCE = 12;

function runningOf(stroke: Stroke, room: Room): string {
  const { analysis } = stroke;
  if (analysis?.status !== 'done') return words.none;
  return room.sides
    .filter((side) => analysis.sides[side] !== undefined)
    .map((side) => `${sideName(side)} ${quantity(analysis.sides[side].runningAmps, 'A')}`)
    .join(words.joint);
}

/** The room's other strokes, to be laid over this one: up to eight in one picture. */
export function ChooseOverlays({ room, stroke, chosen, problem, retry }: ChooseProps) {
  const say = strokeWords.overlays;
  const [both, setBoth] = useState(false);
  // What ran the other way meets other seals and slopes: it is compared on purpose only.
  const way = stroke.analysis?.status === 'done' ? stroke.analysis.direction : null;
  const asked = both || way === null ? '' : `?direction=${way}`;
  const list = usePages<Stroke>(`/rooms/${room.id}/strokes${asked}`, AT_ONCE);
  const full = chosen.length >= MOST_OVERLAYS;
  const toggle = (id: string) =>
    replaceAddress(
      withOverlays(chosen.includes(id) ? chosen.filter((each) => each !== id) : [...chosen, id]),
    );
  const others = list.items.filter(({ id, analysis }) => id !== stroke.id && analysis?.status === 'done');
  return (
    <details class="overlays no-print" open={chosen.length > 0}>
      <summary>{say.title}</summary>
      <p class="about">{say.explain(MOST_OVERLAYS + 1)}</p>
      <Tick label={say.both} on={both} onChange={setBoth} />
      {problem !== null && <Failure problem={problem} retry={retry} />}
      <Loaded load={list.first}>
        {() => (
          <ul class="picks">
            {others.map((other) => {
              const place = chosen.indexOf(other.id);
              return (
                <li key={other.id}>
                  <label>
                    <input
                      type="checkbox"
                      checked={place >= 0}
                      disabled={full && place < 0}
                      onChange={() => toggle(other.id)}
                    />
                    <span>
                      {place >= 0 && <strong class={`overlay-${place + 1}`}>{LETTERS[place]} </strong>}
                      <Moment at={other.startedAt} />
                      <span class="remarks">
                        {words.directions[other.direction ?? 'unknown']}
                        {words.joint}
                        <span dir="auto">{runningOf(other, room)}</span>
                      </span>
                    </span>
                  </label>
                </li>
              );
            })}
          </ul>
        )}
      </Loaded>
      {list.first.value !== null && others.length === 0 && <p class="about">{say.none}</p>}
      <More list={list} />
      {chosen.length > 0 && (
        <button type="button" class="quiet" onClick={() => replaceAddress(withOverlays([]))}>
          {say.clear}
        </button>
      )}
    </details>
  );
}
