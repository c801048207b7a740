import { randomUUID } from 'node:crypto';
import { CALLERS, type CallerName, type People, strokeOf, type Things } from './accessWorld.ts';

type Answers = Readonly<Record<CallerName, number>>;

/** What each kind of caller is answered by one route. */
export interface Row {
  readonly answers: Answers;
  readonly query?: string;
  /** Of the body; JSON unless said. */
  readonly type?: string;
  readonly body?: (things: Things, people: People, caller: CallerName) => object | string;
  /** Text that stands in the answer for these callers, and for nobody else. */
  readonly shows?: { readonly text: (things: Things) => string; readonly to: readonly CallerName[] };
}

const WHO_SEE: readonly CallerName[] = ['dealer', 'technician', 'owner', 'grantedTechnician', 'grantedOwner'];
const WHO_CHANGE: readonly CallerName[] = ['dealer', 'technician', 'grantedTechnician'];
const UNKNOWN: readonly CallerName[] = ['nobody', 'badToken', 'expiredSession', 'logger', 'otherLogger'];

function answers(told: (caller: CallerName) => number): Answers {
  // Every caller has its entry.
  return Object.fromEntries(CALLERS.map((caller) => [caller, told(caller)])) as Answers;
}
const open = (status: number): Answers => answers(() => status);
/** For everybody who signed in. */
const people = (status: number): Answers => answers((caller) => (UNKNOWN.includes(caller) ? 401 : status));
/** A thing of the coach that whoever sees it may read. */
const seen = (status = 200): Answers =>
  answers((caller) => (UNKNOWN.includes(caller) ? 401 : WHO_SEE.includes(caller) ? status : 404));
/** A thing of the coach that owners see and may not change. */
const changed = (status = 200): Answers =>
  answers((caller) => {
    if (UNKNOWN.includes(caller)) return 401;
    if (!WHO_SEE.includes(caller)) return 404;
    return WHO_CHANGE.includes(caller) ? status : 403;
  });
/** A thing that is there for the dealer of its account alone. */
const dealers = (status: number): Answers =>
  answers((caller) => (UNKNOWN.includes(caller) ? 401 : caller === 'dealer' ? status : 404));
const atHome = (status: number, staff: number): Answers =>
  answers((caller) => {
    if (UNKNOWN.includes(caller)) return 401;
    return caller === 'technician' || caller === 'owner' ? staff : status;
  });

const span = '?beforeFrom=2026-01-01T00:00:00Z&beforeTo=2026-02-01T00:00:00Z';
const newEmail = () => `${randomUUID()}@example.com`;

export const ROWS: Readonly<Record<string, Row>> = {
  'GET /': { answers: open(200) },
  'GET /healthz': { answers: open(200) },
  'GET /readyz': { answers: open(200) },
  // To whoever asks from the same machine.
  'GET /metrics': { answers: open(200) },
  'GET /problems/:name': { answers: open(200) },
  'GET /api/openapi.json': { answers: open(200) },

  'POST /api/v1/set-up': {
    answers: open(404),
    body: () => ({ token: 'none', email: newEmail(), name: 'Nobody', password: 'a long enough secret' }),
  },
  'POST /api/v1/session': {
    answers: open(200),
    body: (_, { dealer: { email, password } }) => ({ email, password }),
  },
  'GET /api/v1/session': { answers: people(200) },
  'DELETE /api/v1/session': { answers: people(204) },
  'GET /api/v1/sessions': {
    answers: people(200),
    shows: { text: ({ session }) => session, to: ['dealer'] },
  },
  'DELETE /api/v1/sessions': { answers: people(204) },
  'DELETE /api/v1/sessions/:id': { answers: dealers(204) },
  'PUT /api/v1/password': {
    answers: people(204),
    body: (_, all, caller) => {
      const password = caller in all ? all[caller as keyof People].password : 'a long enough secret';
      return { oldPassword: password, newPassword: password };
    },
  },
  'POST /api/v1/tokens': {
    answers: people(201),
    body: () => ({ name: 'Nightly list', until: new Date(Date.now() + 86_400_000).toISOString() }),
  },
  'GET /api/v1/tokens': { answers: people(200) },
  'DELETE /api/v1/tokens/:id': { answers: people(404) },
  'POST /api/v1/password-resets': { answers: open(202), body: () => ({ email: newEmail() }) },
  'GET /api/v1/password-resets/:reset': { answers: open(404) },
  'POST /api/v1/password-resets/:reset': {
    answers: open(404),
    body: () => ({ password: 'a long enough secret' }),
  },
  'GET /api/v1/settings': { answers: people(200) },
  'PATCH /api/v1/settings': { answers: people(200), body: () => ({ units: 'us' }) },
  'GET /api/v1/settings/notices': { answers: people(200) },
  'PATCH /api/v1/settings/notices': { answers: people(200), body: () => ({ warningsFrom: 'stop' }) },
  'POST /api/v1/settings/notices/resumption': { answers: people(200) },
  'GET /unsubscribe/:token': { answers: open(200) },
  'POST /unsubscribe/:token': { answers: open(404) },
  'GET /api/v1/overview/look': { answers: people(200) },
  'POST /api/v1/overview/look': { answers: people(200) },
  'GET /api/v1/invitations/:invitation': { answers: open(204) },
  'POST /api/v1/invitations/:invitation': {
    answers: open(200),
    body: () => ({ password: 'a long enough secret' }),
  },

  'POST /api/v1/people': {
    answers: atHome(201, 403),
    body: () => ({ email: newEmail(), name: 'Ines', role: 'owner' }),
  },
  'GET /api/v1/people': {
    answers: atHome(200, 404),
    query: '?limit=500',
    shows: { text: ({ person }) => person, to: ['dealer'] },
  },
  'GET /api/v1/people/:id': { answers: dealers(200) },
  'PATCH /api/v1/people/:id': { answers: dealers(200), body: () => ({ role: 'technician' }) },
  'DELETE /api/v1/people/:id': { answers: dealers(204) },
  'DELETE /api/v1/people/:id/sessions': { answers: dealers(204) },
  'POST /api/v1/people/:id/invitation': { answers: dealers(201) },

  'GET /api/v1/account': { answers: atHome(200, 404) },
  'PATCH /api/v1/account': { answers: atHome(200, 404), body: () => ({ traceMonths: 24 }) },
  'GET /api/v1/account/retention-runs': { answers: atHome(200, 404) },
  'GET /api/v1/record': {
    answers: atHome(200, 404),
    query: '?limit=500',
    shows: { text: ({ person }) => person, to: ['dealer'] },
  },

  'POST /api/v1/webhooks': {
    answers: atHome(201, 404),
    body: () => ({ url: 'https://programs.example.com/news' }),
  },
  'GET /api/v1/webhooks': {
    answers: atHome(200, 404),
    shows: { text: ({ webhook }) => webhook, to: ['dealer'] },
  },
  'GET /api/v1/webhooks/:id': { answers: dealers(200) },
  'PATCH /api/v1/webhooks/:id': { answers: dealers(200), body: () => ({ enabled: false }) },
  'DELETE /api/v1/webhooks/:id': { answers: dealers(204) },
  'POST /api/v1/webhooks/:id/test': { answers: dealers(201) },
  'GET /api/v1/webhooks/:id/deliveries': { answers: dealers(200) },

  'POST /api/v1/coaches': {
    answers: answers((caller) => (UNKNOWN.includes(caller) ? 401 : caller === 'owner' ? 403 : 201)),
    body: () => ({ name: 'Wren' }),
  },
  'GET /api/v1/coaches': {
    answers: people(200),
    query: '?limit=500',
    shows: { text: ({ coach }) => coach, to: WHO_SEE },
  },
  'GET /api/v1/coaches/:id': { answers: seen() },
  'PATCH /api/v1/coaches/:id': { answers: changed(), body: () => ({ notes: 'Washed.' }) },
  'DELETE /api/v1/coaches/:id': { answers: changed(204) },
  // Nothing was deleted: there is nothing to restore for anybody.
  'POST /api/v1/coaches/:id/restoration': { answers: people(404) },

  'POST /api/v1/coaches/:coachId/grants': {
    answers: answers((caller) => {
      if (UNKNOWN.includes(caller)) return 401;
      return caller === 'dealer' ? 201 : WHO_SEE.includes(caller) ? 403 : 404;
    }),
    body: () => ({ email: newEmail(), role: 'owner' }),
  },
  'GET /api/v1/coaches/:coachId/grants': { answers: dealers(200) },
  'GET /api/v1/grants/:id': { answers: dealers(200) },
  'DELETE /api/v1/grants/:id': { answers: dealers(204) },

  'POST /api/v1/coaches/:coachId/rooms': {
    answers: changed(201),
    body: () => ({ name: 'Den', drive: 'other', sides: ['main'] }),
  },
  'GET /api/v1/coaches/:coachId/rooms': { answers: seen() },
  'GET /api/v1/rooms/:id': { answers: seen() },
  'PATCH /api/v1/rooms/:id': { answers: changed(), body: () => ({ name: 'Den' }) },
  'DELETE /api/v1/rooms/:id': { answers: changed(204) },

  'POST /api/v1/coaches/:coachId/loggers': {
    answers: changed(201),
    body: () => ({ name: 'Shunt', sensor: 'shunt' }),
  },
  'GET /api/v1/coaches/:coachId/loggers': { answers: seen() },
  'GET /api/v1/loggers/:id': { answers: seen() },
  'PATCH /api/v1/loggers/:id': { answers: changed(), body: () => ({ name: 'Clamp' }) },
  'DELETE /api/v1/loggers/:id': { answers: changed(204) },

  'POST /api/v1/rooms/:roomId/services': {
    answers: seen(201),
    body: () => ({ kind: 'cleaned', at: '2026-05-01T10:00:00Z' }),
  },
  'GET /api/v1/rooms/:roomId/services': { answers: seen() },
  'GET /api/v1/services/:id': { answers: seen() },
  'PATCH /api/v1/services/:id': { answers: changed(), body: () => ({ notes: 'Soap.' }) },
  'DELETE /api/v1/services/:id': { answers: changed(204) },

  'POST /api/v1/strokes': {
    answers: answers((caller) => {
      if (caller.endsWith('ogger')) return 200;
      return UNKNOWN.includes(caller) ? 401 : caller === 'owner' ? 403 : 200;
    }),
    body: ({ room }) => strokeOf(room),
    shows: { text: () => '"outcome":"stored"', to: ['logger', ...WHO_CHANGE] },
  },
  'POST /api/v1/rooms/:id/strokes/preview': {
    answers: changed(),
    type: 'text/csv',
    body: () => 't,amps\n0,0\n1,9\n2,8\n3,0\n',
  },
  'GET /api/v1/strokes/:id': { answers: seen() },
  'PATCH /api/v1/strokes/:id': { answers: changed(), body: () => ({ excluded: true }) },
  'DELETE /api/v1/strokes/:id': { answers: changed(204) },
  'GET /api/v1/strokes/:id/trace': { answers: seen() },
  // Of five samples no travel can be made: whoever sees the stroke is told that.
  'GET /api/v1/strokes/:id/travel': { answers: seen(404) },

  // Without a token it may be sent as the first message; without a WebSocket nothing is to be had.
  'GET /api/v1/live': {
    answers: answers((caller) => (caller !== 'nobody' && UNKNOWN.includes(caller) ? 401 : 426)),
  },
  // A logger's alone.
  'GET /api/v1/strokes/live': {
    answers: answers((caller) => (caller === 'nobody' || caller.endsWith('ogger') ? 426 : 401)),
  },

  'GET /api/v1/measures': { answers: people(200) },
  'GET /api/v1/rooms/:id/strokes': { answers: seen() },
  'GET /api/v1/rooms/:id/normal': { answers: seen(), query: '?direction=extend' },
  'GET /api/v1/rooms/:id/trend': { answers: seen(), query: '?measure=runningAmps&direction=extend' },
  'GET /api/v1/rooms/:id/status': { answers: seen() },
  'GET /api/v1/rooms/:id/warnings': { answers: seen() },
  'GET /api/v1/rooms/:id/comparison': {
    answers: seen(),
    query: `${span}&afterFrom=2026-03-01T00:00:00Z&afterTo=2026-04-01T00:00:00Z`,
  },
  'GET /api/v1/warnings': {
    answers: people(200),
    shows: { text: ({ warning }) => warning, to: WHO_SEE },
  },
  'GET /api/v1/warnings/:id': { answers: seen() },
  'POST /api/v1/warnings/:id/acknowledgement': { answers: seen(), body: () => ({ note: 'Seen.' }) },
  'POST /api/v1/acknowledgements': {
    answers: people(200),
    body: ({ warning }) => ({ warnings: [warning] }),
    shows: { text: ({ warning }) => warning, to: WHO_SEE },
  },
  'GET /api/v1/overview/summary': {
    answers: people(200),
    shows: { text: ({ name }) => name, to: WHO_SEE },
  },
  'GET /api/v1/overview': {
    answers: people(200),
    query: '?limit=500',
    shows: { text: ({ room }) => room, to: WHO_SEE },
  },
};
