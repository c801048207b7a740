import type { Severity } from '../../migrations/columns.ts';
import type { WarningEvent } from '../schemas/webhook.ts';

const SEVERITIES: Readonly<Record<Severity, string>> = {
  watch: 'watch',
  service: 'needs work',
  stop: 'stop using it',
};

function count(n: number, one: string, many: string): string {
  return `${n} ${n === 1 ? one : many}`;
}

function what(event: WarningEvent, severity: Severity): string {
  if (event === 'warning.cleared') return 'a warning has cleared';
  return `${event === 'warning.worse' ? 'worse: ' : ''}${SEVERITIES[severity]}`;
}

/** Every word that messages say. They report what was measured; none may promise that a room is in order. */
export const mailWords = {
  subject: (event: WarningEvent, severity: Severity, coach: string, room: string) =>
    `${coach}, ${room}: ${what(event, severity)}`,
  several: (n: number, stop: boolean) =>
    `${count(n, 'notice', 'notices')}${stop ? ', stop using a room' : ''}`,
  line: (event: WarningEvent, severity: Severity, coach: string, room: string) =>
    `${coach}, ${room}: ${what(event, severity)}.`,
  since: (when: string) => `First seen ${when}.`,
  wasOpen: (from: string, to: string) => `It was open from ${from} to ${to}.`,
  /** What its reader is to do, as the pages say it of a room. */
  means: {
    watch: 'It can wait; keep an eye on it.',
    service: 'Have it looked at before the next trip.',
    stop: 'Leave this room where it is until it has been looked at.',
  } satisfies Readonly<Record<Severity, string>>,
  checks: 'What to check, in this order:',
  cautions: 'Before you touch anything:',
  item: (text: string) => `- ${text}`,
  andMore: (n: number) => `And ${count(n, 'more', 'more')}: look at the list of coaches.`,
  promise:
    'These are measurements and likely causes, not a promise. Look before you move a room, and keep everyone out of its travel.',
  asked: 'You get this because you asked for it.',
  change: (url: string) => `Change your notices: ${url}`,
  end: (url: string) => `End these messages: ${url}`,

  silentSubject: (coach: string, logger: string) => `${coach}: ${logger} is silent`,
  silent: (coach: string, logger: string, days: number) =>
    `${coach}: the logger ${logger} has not been heard from for ${count(days, 'day', 'days')}.`,
  lastHeard: (when: string) =>
    `Last heard from ${when}. Check its supply and its network, unless the coach is simply parked.`,
  neverHeard: 'It has never been heard from. Check its token, its supply and its network.',

  digest: 'Your week: rooms that need work',
  digestRooms: (rooms: Readonly<Record<string, number>>) =>
    `Rooms: ${rooms.stop ?? 0} to stop using, ${rooms.service ?? 0} that need work, ${rooms.watch ?? 0} to watch, ` +
    `${rooms.clear ?? 0} clear, ${rooms.learning ?? 0} still learning, ${rooms.unknown ?? 0} without an answer.`,
  digestChanges: ({ worse, better, cleared }: { worse: number; better: number; cleared: number }) =>
    `Since a week ago: ${worse} worse, ${better} better, ${cleared} cleared.`,
  digestSilent: (n: number) => `Silent loggers: ${n}.`,
  worst: (verdict: Severity, coach: string, room: string) => `${coach}, ${room}: ${SEVERITIES[verdict]}.`,
  pausedMail: (email: string) => `Mail to ${email} is paused: the mailbox was refused.`,
  troubledWebhook: (url: string) => `The webhook ${url} is failing.`,
} as const;
