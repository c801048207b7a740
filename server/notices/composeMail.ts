import { createHash } from 'node:crypto';
import { CAUTIONS } from '../../analysis/advice/cautions.ts';
import type { Mail } from '../mail/mailer.ts';
import { mailWords as say } from './mailWords.ts';
import type { DigestNotice, Notice, SilentNotice, WarningNotice } from './notice.ts';
import type { ReaderRow } from './reader.ts';
import { unsubscribeToken } from './unsubscribe.ts';

/** With more than these in one message the checks of each are left to its page. */
const MOST_IN_FULL = 3;
const MOST_SAID = 50;

/** The message that tells a person some notices, in plain text. `publicUrl` may be empty: then it has no links. */
export function composeMail(
  reader: ReaderRow,
  message: string,
  notices: readonly Notice[],
  publicUrl: string,
): Mail {
  const writer = new Writer(reader, publicUrl, notices.length <= MOST_IN_FULL);
  const said = notices.slice(0, MOST_SAID).map((notice) => writer.part(notice));
  const left = notices.length - said.length;
  const end = publicUrl === '' ? null : `${publicUrl}/unsubscribe/${unsubscribeToken(reader)}`;
  return {
    to: reader.email,
    subject: subjectOf(notices),
    text: [
      ...said,
      ...(left > 0 ? [say.andMore(left)] : []),
      say.promise,
      say.asked,
      ...(end === null ? [] : [say.change(`${publicUrl}/notices`), say.end(end)]),
    ].join('\n\n'),
    messageId: messageIdOf(message, publicUrl),
    ...(end === null ? {} : { unsubscribeUrl: end }),
  };
}

/** The same each time the message is tried: whoever gets it twice can know it. */
function messageIdOf(message: string, publicUrl: string): string {
  const host = publicUrl === '' ? 'slideload.invalid' : new URL(publicUrl).hostname;
  return `<${createHash('sha256').update(message).digest('hex').slice(0, 32)}@${host}>`;
}

function subjectOf(notices: readonly Notice[]): string {
  const [first] = notices;
  if (notices.length > 1) return say.several(notices.length, notices.some(isStop));
  switch (first.event) {
    case 'digest':
      return say.digest;
    case 'logger.silent':
      return say.silentSubject(first.coach, first.logger);
    default:
      return say.subject(first.event, first.severity, first.coach, first.room);
  }
}

function isStop(notice: Notice): boolean {
  return 'severity' in notice && notice.severity === 'stop' && notice.event !== 'warning.cleared';
}

class Writer {
  readonly #publicUrl: string;
  readonly #inFull: boolean;
  readonly #time: Intl.DateTimeFormat;

  constructor({ locale, time_zone }: ReaderRow, publicUrl: string, inFull: boolean) {
    this.#publicUrl = publicUrl;
    this.#inFull = inFull;
    this.#time = new Intl.DateTimeFormat(locale ?? 'en-GB', {
      timeZone: time_zone ?? 'UTC',
      year: 'numeric',
      month: 'long',
      day: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      timeZoneName: 'short',
    });
  }

  part(notice: Notice): string {
    switch (notice.event) {
      case 'digest':
        return this.#digest(notice);
      case 'logger.silent':
        return this.#silent(notice);
      default:
        return this.#warning(notice);
    }
  }

  #warning(notice: WarningNotice): string {
    const { event, severity, coach, room, headline, openedAt, clearedAt, checks, cautions } = notice;
    const isOver = event === 'warning.cleared';
    const lines = [
      say.line(event, severity, coach, room),
      headline,
      isOver && clearedAt !== null
        ? say.wasOpen(this.#when(openedAt), this.#when(clearedAt))
        : say.since(this.#when(openedAt)),
    ];
    if (!isOver) lines.push(say.means[severity]);
    // Wherever something is to be looked at, and wherever a room is to be left alone, the cautions stand before it.
    if (!isOver && (this.#inFull || severity === 'stop')) lines.push(say.cautions, ...cautions.map(say.item));
    if (!isOver && this.#inFull && checks.length > 0) lines.push(say.checks, ...checks.map(say.item));
    return [...lines, ...this.#link(`/rooms/${notice.roomId}`)].join('\n');
  }

  #silent({ coach, coachId, logger, lastHeardAt, days }: SilentNotice): string {
    const heard = lastHeardAt === null ? say.neverHeard : say.lastHeard(this.#when(lastHeardAt));
    return [say.silent(coach, logger, days), heard, ...this.#link(`/coaches/${coachId}`)].join('\n');
  }

  #digest({ rooms, changes, silentLoggers, worst, troubledWebhooks, paused }: DigestNotice): string {
    return [
      say.digestRooms(rooms),
      say.digestChanges(changes),
      say.digestSilent(silentLoggers),
      ...worst.flatMap(({ coach, room, verdict, headline, roomId }) => [
        '',
        say.worst(verdict, coach, room),
        headline,
        ...this.#link(`/rooms/${roomId}`),
      ]),
      ...(worst.some(({ verdict }) => verdict === 'stop')
        ? ['', say.cautions, say.item(CAUTIONS.travel)]
        : []),
      ...troubledWebhooks.map(say.troubledWebhook),
      ...paused.map(say.pausedMail),
      '',
      ...this.#link('/'),
    ].join('\n');
  }

  #link(path: string): string[] {
    return this.#publicUrl === '' ? [] : [`${this.#publicUrl}${path}`];
  }

  #when(time: string): string {
    return this.#time.format(new Date(time));
  }
}
