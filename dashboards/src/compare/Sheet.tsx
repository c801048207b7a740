import type { Coach, Comparison, MeasureTitle, Room, Service, Warning } from '../api/types.ts';
import { dayText, toldHere } from '../format.ts';
import { sideName } from '../sideName.ts';
import { words } from '../words.ts';
import { Answer } from './Answer.tsx';
import { Group } from './Group.tsx';
import { isCompared } from './isCompared.ts';
import { profileScale } from './profileScale.ts';
import type { Question } from './question.ts';

interface SheetProps {
  readonly coach: Coach | null;
  readonly room: Room;
  readonly service: Service | null;
  readonly warnings: readonly Warning[] | null;
  readonly question: Question;
  readonly comparison: Comparison;
  readonly titles: readonly MeasureTitle[];
}

/** What was held against what; null: no stroke. */
function spanText({ before, after }: Comparison, which: 'before' | 'after'): string | null {
  const say = words.compare;
  const { from, to, strokes } = which === 'before' ? before : after;
  if (from === null || to === null) return null;
  const text = say.spanOf(strokes, dayText(from), dayText(to));
  if (which === 'after' || before.since === null) return text;
  return `${text}${words.joint}${say.since(words.warnings.kinds[before.since])}`;
}

/** Coach, room, work and dates. */
function Heads({ coach, room, service, question, comparison }: Omit<SheetProps, 'titles' | 'warnings'>) {
  const say = words.compare;
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

function Keys() {
  const say = words.compare;
  return (
    <ul class="keys compare-keys" aria-label={say.keys}>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-band-before" d="M1 2h26v10h-26z" />
          <path class="profile-before" d="M1 7h26" />
        </svg>
        {say.beforeKey}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-band-after" d="M1 2h26v10h-26z" />
          <path class="profile-after" d="M1 7h26" />
        </svg>
        {say.afterKey}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="profile-changed" d="M1 0h26v14h-26z" />
          <path class="profile-bar" d="M1 13h26" />
        </svg>
        {say.changed}
      </li>
      <li>
        <svg class="key" viewBox="0 0 28 14" aria-hidden="true" focusable="false">
          <path class="interval-zero" d="M6 0v14" />
          <path class="interval-span" d="M11 7h15" />
          <path class="interval-point" d="M18 7h0" />
        </svg>
        {say.intervalKey}
      </li>
    </ul>
  );
}

/** The whole finding, in the order in which it is read aloud to a customer. Prints on one page. */
export function Sheet(props: SheetProps) {
  const say = words.compare;
  const { comparison, titles, question, service, warnings } = props;
  const answered = comparison.groups.some(isCompared);
  const scale = profileScale(comparison.groups);
  return (
    <article class="sheet">
      <section class="answer finding" aria-labelledby="finding">
        <h2 id="finding" class="finding-title">
          {say.finding}
        </h2>
        {(question.kind === 'spans' || service !== null) && (
          <Answer comparison={comparison} service={service} warnings={warnings} />
        )}
        <p>{toldHere(comparison.sentence)}</p>
        {!answered && (
          <>
            <p>{question.kind === 'spans' ? say.tooFewInSpans : say.tooFew}</p>
            <ul>
              {comparison.groups.map((group) => (
                <li key={`${group.side}/${group.direction}`} dir="auto">
                  {say.group(sideName(group.side), group.direction)}
                  {': '}
                  {say.counted(group.strokesBefore, group.strokesAfter)}
                </li>
              ))}
            </ul>
          </>
        )}
      </section>
      <Heads {...props} />
      {answered && (
        <section aria-labelledby="compared">
          <h2 id="compared">{say.pictures}</h2>
          <Keys />
          <div class="pair compared-groups">
            {comparison.groups.map((group) => (
              <Group
                key={`${group.side}/${group.direction}`}
                room={props.room}
                group={group}
                titles={titles}
                scale={scale}
              />
            ))}
          </div>
        </section>
      )}
      <section class="cautions" aria-labelledby="cautions">
        <h2 id="cautions">{say.cautionsTitle}</h2>
        <ul>
          {say.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <p class="method">
        <strong>{say.method}</strong> {toldHere(comparison.method)} {say.ownScale}
      </p>
    </article>
  );
}
