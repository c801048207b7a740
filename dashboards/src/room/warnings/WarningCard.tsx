import { useId } from 'preact/hooks';
import type { Room, Warning } from '../../api/types.ts';
import { LongText } from '../../components/told/LongText.tsx';
import { Moment } from '../../components/told/Moment.tsx';
import { VerdictSign } from '../../components/told/VerdictSign.tsx';
import { placeText, toldHere, whenText } from '../../format.ts';
import { sideName } from '../../sideName.ts';
import { words } from '../../words.ts';
import { EvidencePicture } from '../evidence/EvidencePicture.tsx';
import { evidenceLines } from '../evidence/evidence.ts';
import { Acknowledge } from './Acknowledge.tsx';
import { Advice } from './Advice.tsx';
import { howSure } from './howSure.ts';

interface WarningProps {
  readonly warning: Warning;
  readonly room: Room;
  /** Whether it is the first one of its page. */
  readonly isFirst?: boolean;
  /** Given while the warning may be acknowledged. */
  readonly onAcknowledged?: () => void;
}

function aboutLines(warning: Warning, room: Room): [string, string][] {
  const lines: [string, string | null][] = [
    [words.warnings.side, warning.side === null ? null : sideName(warning.side)],
    [words.warnings.direction, warning.direction === null ? null : words.doing[warning.direction]],
    [words.warnings.place, warning.position === null ? null : placeText(warning.position, room.travelMetres)],
    [words.warnings.pattern, warning.pattern === null ? null : words.warnings.patterns[warning.pattern]],
  ];
  return lines.flatMap(([label, value]) => (value === null ? [] : [[label, value]]));
}

/** Whether only the time of the record is in doubt, of which its current shows nothing. */
function isOfClock({ kind, evidence }: Warning): boolean {
  return kind === 'sensor-doubt' && evidence.doubt === 'clock';
}

function likelyCause(warning: Warning): string {
  const say = words.warnings;
  if (isOfClock(warning)) return say.likelyMisdated;
  return warning.pattern === null ? say.likely[warning.kind] : say.likelyOfPattern[warning.pattern];
}

/** A warning in the order in which it is asked about: seen, how sure, likely cause, checks, what not to do, when to stop. */
export function WarningCard({ warning, room, isFirst = false, onAcknowledged }: WarningProps) {
  const id = useId();
  const lines = [...aboutLines(warning, room), ...evidenceLines(warning.evidence)];
  return (
    <article class={`warning warning-${warning.severity}`} aria-labelledby={id}>
      <p class="warning-kind">
        <VerdictSign verdict={warning.severity} />
        <strong>{words.verdicts[warning.severity].word}</strong>
        <span>{words.warnings.kinds[warning.kind]}</span>
      </p>
      <h3 id={id} dir="auto">
        {toldHere(warning.headline)}
      </h3>
      <p class="about">
        <span class="apart">
          {words.warnings.since} <Moment at={warning.placedAt} />
        </span>{' '}
        <span class="together">
          <a class="apart" href={`/strokes/${warning.firstStrokeId}`}>
            {words.warnings.first}
          </a>{' '}
          <a href={`/strokes/${warning.latestStrokeId}`}>{words.warnings.latest}</a>
        </span>
      </p>
      {warning.clearedAt !== null && (
        <p class="about">{words.warnings.cleared(whenText(warning.clearedAt))}</p>
      )}
      {warning.acknowledgement !== null && (
        <div class="about">
          <p dir="auto">
            {words.warnings.seenBy(warning.acknowledgement.by, whenText(warning.acknowledgement.at))}
            {warning.acknowledgement.note !== null && ':'}
          </p>
          {warning.acknowledgement.note !== null && <LongText text={warning.acknowledgement.note} />}
        </div>
      )}
      <div class="warning-body">
        <div>
          <h4>{words.warnings.seen}</h4>
          {!isOfClock(warning) && <EvidencePicture warning={warning} room={room} />}
          {lines.length > 0 && (
            <dl class="facts">
              {lines.map(([label, value]) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd dir="auto">{value}</dd>
                </div>
              ))}
            </dl>
          )}
          <h4>{words.warnings.sureTitle}</h4>
          <p>{howSure(warning)}</p>
          <h4>{words.warnings.likelyTitle}</h4>
          <p>{likelyCause(warning)}</p>
        </div>
        {warning.state !== 'cleared' && <Advice warning={warning} isFirst={isFirst} />}
      </div>
      {onAcknowledged !== undefined && <Acknowledge warning={warning} onDone={onAcknowledged} />}
    </article>
  );
}
