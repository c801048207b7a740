import type { Coach, Comparison, Room, Service } from '../api/types.ts';
import { dayText } from '../format.ts';
import { sideName } from '../sideName.ts';
import { compareWords } from '../words/compare.ts';
import { words } from '../words.ts';
import type { Question } from './question.ts';

export interface HeadsProps {
  readonly coach: Coach | null;
  readonly room: Room;
  readonly service: Service | null;
  readonly question: Question;
  readonly comparison: Comparison;
}

/** What was held against what; null: no stroke. */
function spanText({ before, after }: Comparison, which: 'before' | 'after'): string | null {
  const say = compareWords;
  const { from, to, strokes } = which === 'before' ? before : after;
  if (from === null || to === null) return null;
  const text = say.spanOf(strokes, dayText(from), dayText(to));
  if (which === 'after' || before.since === null) return text;
  return `${text}${words.joint}${say.since(words.warnings.kinds[before.since])}`;
}

/** Coach, room, work and dates. */
export function Heads({ coach, room, service, question, comparison }: HeadsProps) {
  const say = compareWords;
  const noon = (day: string) => dayText(`${day}T12:00`);
  const lines: [string, string][] = [];
  if (comparison.account !== null) lines.push([say.from, comparison.account]);
  if (coach !== null) {
    lines.push([
      say.coach,
      [coach.name, coach.model, coach.year].filter((part) => part !== null).join(words.joint),
    ]);
  }
  lines.push([say.room, [room.name, words.room.drives[room.drive]].join(words.joint)]);
  if (question.kind === 'spans') {
    const { beforeFrom, beforeTo, afterFrom, afterTo } = question.spans;
    lines.push([say.before, say.span(noon(beforeFrom), noon(beforeTo))]);
    lines.push([say.after, say.span(noon(afterFrom), noon(afterTo))]);
  } else if (service !== null) {
    const kind = words.services.kinds[service.kind];
    lines.push([say.work, service.side === null ? kind : `${kind}, ${sideName(service.side)}`]);
    lines.push([say.workOn, dayText(service.at)]);
    if (service.notes) lines.push([say.notes, service.notes]);
  }
  lines.push([say.printed, dayText(Date.now())]);
  const spans = question.kind === 'spans' ? [] : (['before', 'after'] as const);
  return (
    <dl class="facts sheet-heads">
      {lines.map(([label, text]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd dir="auto">{text}</dd>
        </div>
      ))}
      {spans.map((which) => {
        const text = spanText(comparison, which);
        return (
          text !== null && (
            <div key={which} class="compared-span">
              <dt>{say[which]}</dt>
              <dd>{text}</dd>
            </div>
          )
        );
      })}
    </dl>
  );
}
