import { useContext } from 'preact/hooks';
import type { Room, Stroke } from '../api/types.ts';
import { usePages } from '../api/usePages.ts';
import { useRefresh } from '../api/useRefresh.ts';
import { More } from '../components/coming/More.tsx';
import { Loaded } from '../components/coming/states.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { Scroll } from '../components/told/Scroll.tsx';
import { quantity } from '../format.ts';
import { SessionContext } from '../session.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';

const STROKES_AT_ONCE = 12;

/** What should catch the eye about one stroke. */
function remarks(stroke: Stroke): string[] {
  const say = words.strokes;
  const { analysis } = stroke;
  if (analysis === null) return [say.pending];
  const found: string[] = stroke.excluded ? [say.excluded] : [];
  if (analysis.status === 'unusable') return [...found, say.unusable];
  const sides = Object.values(analysis.sides);
  const spikes = sides.reduce((n, side) => n + side.spikes.length, 0);
  const dips = sides.reduce((n, side) => n + side.dips.length, 0);
  if (spikes > 0) found.push(say.spikes(spikes));
  if (dips > 0) found.push(say.dips(dips));
  if (analysis.doubts.length > 0) found.push(say.doubtful);
  return found;
}

function StrokeRow({ stroke, sides }: { readonly stroke: Stroke; readonly sides: readonly string[] }) {
  const done = stroke.analysis?.status === 'done' ? stroke.analysis : null;
  const direction = done?.direction ?? stroke.direction ?? 'unknown';
  const durations = done === null ? [] : Object.values(done.sides).map((side) => side.durationS);
  return (
    <tr class={stroke.excluded ? 'aside' : undefined}>
      <th scope="row">
        <a href={`/strokes/${stroke.id}`}>
          <Moment at={stroke.placedAt} />
        </a>
        <span class="remarks">{[words.directions[direction], ...remarks(stroke)].join(words.joint)}</span>
      </th>
      {sides.map((side) => (
        <td key={side} class="number">
          {quantity(done?.sides[side]?.runningAmps, 'A')}
        </td>
      ))}
      <td class="number">
        {quantity(durations.length === 0 ? null : Math.max(...durations), words.units.seconds)}
      </td>
    </tr>
  );
}

export function StrokesSection({ room, version }: { readonly room: Room; readonly version: string }) {
  const list = usePages<Stroke>(`/rooms/${room.id}/strokes?profiles=false`, STROKES_AT_ONCE);
  useRefresh(version, list.first.reload);
  const { person } = useContext(SessionContext);
  const say = words.strokes;
  return (
    <section aria-labelledby="strokes" class="strokes">
      <h2 id="strokes">{say.title}</h2>
      {person?.role !== 'owner' && (
        <p>
          <a class="alone" href={`/rooms/${room.id}/upload`}>
            {say.addRecording}
          </a>
        </p>
      )}
      <Loaded load={list.first}>
        {() =>
          list.items.length === 0 ? (
            <p class="about">{say.empty}</p>
          ) : (
            <Scroll of={say.title}>
              <table>
                <caption>{say.caption}</caption>
                <thead>
                  <tr>
                    <th scope="col">{say.when}</th>
                    {room.sides.map((side) => (
                      <th key={side} scope="col" class="number" dir="auto">
                        {say.running(sideName(side))}
                      </th>
                    ))}
                    <th scope="col" class="number">
                      {say.duration}
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {list.items.map((stroke) => (
                    <StrokeRow key={stroke.id} stroke={stroke} sides={room.sides} />
                  ))}
                </tbody>
              </table>
            </Scroll>
          )
        }
      </Loaded>
      <More list={list} />
    </section>
  );
}
