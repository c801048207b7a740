import type { ComponentChildren } from 'preact';
import type { RoomStatus } from '../api/types.ts';
import { Moment } from '../components/told/Moment.tsx';
import { VerdictWord } from '../components/told/VerdictSign.tsx';
import { isTrouble } from '../concern.ts';
import { percent, toldHere } from '../format.ts';
import { words } from '../words.ts';

interface RoomAnswerProps {
  readonly status: RoomStatus;
  /** Where the page is of several rooms: which one this is. */
  readonly heading?: ComponentChildren;
  /** Where to read what to check, should something be wrong. */
  readonly checksAt: string;
  /** Where work is recorded and told of, should it stand on this page. */
  readonly workAt?: string;
}

/** The answer for one room: a word and a sign, a sentence, what to do, and when. It fits a phone's first screen. */
export function RoomAnswer({ status, heading, checksAt, workAt }: RoomAnswerProps) {
  const { verdict, headline, strokes, lastStrokeAt, pending, borrowed } = status;
  return (
    <section
      class={`answer answer-${verdict}`}
      aria-label={heading === undefined ? words.verdicts[verdict].word : undefined}
    >
      {heading}
      <p class="answer-word">
        <VerdictWord verdict={verdict} />
      </p>
      <p class="answer-headline" dir="auto">
        {toldHere(headline)}
      </p>
      <p class="answer-means">{words.verdicts[verdict].means}</p>
      {isTrouble(verdict) && (
        <p class="answer-checks">
          <a href={checksAt}>{words.room.checks}</a>
        </p>
      )}
      {workAt !== undefined && (
        <p class="answer-checks">
          <a href={workAt}>{words.room.work}</a>
        </p>
      )}
      <p class="answer-about">
        {words.room.counted(strokes)}
        {lastStrokeAt !== null && (
          <>
            {', '}
            {words.room.lastStroke} <Moment at={lastStrokeAt} ago />
          </>
        )}
        {pending > 0 && <span role="status"> · {words.room.pending(pending)}</span>}
      </p>
      {borrowed !== null && (
        <p class="answer-about">
          {verdict === 'learning'
            ? words.room.lends(borrowed.rooms)
            : words.room.borrowed(percent(borrowed.share), borrowed.rooms)}
        </p>
      )}
    </section>
  );
}
