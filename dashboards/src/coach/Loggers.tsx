import { useState } from 'preact/hooks';
import type { CoachOverview, Logger, LoggerWithToken } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { useTakesFocus } from '../components/focus/useTakesFocus.ts';
import { Works } from '../components/focus/Works.tsx';
import { Moment } from '../components/told/Moment.tsx';
import { Copyable } from '../forms/Copyable.tsx';
import { Delete } from '../forms/Delete.tsx';
import { LoggerForm } from '../forms/LoggerForm.tsx';
import { Opens } from '../forms/Opens.tsx';
import { words } from '../words.ts';

interface LoggersProps {
  readonly coach: CoachOverview;
  readonly mayChange: boolean;
  /** How often the page asked for the form of a logger. */
  readonly asked: number;
  readonly onChange: () => void;
}

type Heard = CoachOverview['loggers'][number];

interface NewTokenProps {
  readonly made: LoggerWithToken;
  /** One that the logger could send for, if there is any. */
  readonly room: CoachOverview['rooms'][number] | undefined;
  readonly onClose: () => void;
}

/** The token of a logger that was just made, and how a board uses it: shown this once. */
function NewToken({ made, room, onClose }: NewTokenProps) {
  const say = words.forms;
  const line = say.curlLine(
    location.origin,
    made.token,
    room?.id ?? say.aRoomId,
    room?.sides ?? ['main'],
    made.createdAt,
  );
  const place = useTakesFocus<HTMLElement>();
  return (
    <section ref={place} class="note" aria-labelledby="new-token" tabIndex={-1}>
      <h3 id="new-token" dir="auto">
        {say.tokenOf(made.name)}
      </h3>
      <p>{say.tokenOnce}</p>
      <Copyable label={say.token} text={made.token} />
      <Copyable label={say.curl} text={line} />
      <button type="button" onClick={onClose}>
        {say.tokenKept}
      </button>
    </section>
  );
}

/** What of a logger can be changed is asked for when somebody wants to. */
function ChangeLogger({ logger, onChange }: { readonly logger: Heard; readonly onChange: () => void }) {
  const load = useLoad<Logger>(`/loggers/${logger.id}`);
  return (
    <Loaded load={load}>
      {(full) => (
        <>
          <LoggerForm coachId={full.coachId} logger={full} onDone={onChange} />
          <Delete
            path={`/loggers/${logger.id}`}
            name={logger.name}
            means={words.forms.deleteLogger}
            onDone={onChange}
          />
        </>
      )}
    </Loaded>
  );
}

function LoggerLine({
  logger,
  mayChange,
  onChange,
}: {
  logger: Heard;
  mayChange: boolean;
  onChange: () => void;
}) {
  return (
    <li>
      <strong dir="auto">{logger.name}</strong>{' '}
      <span class={logger.silent ? 'silent' : 'about'}>
        {logger.lastHeardAt === null ? (
          words.coach.neverHeard
        ) : (
          <>
            {words.coach.heard} <Moment at={logger.lastHeardAt} ago />
          </>
        )}
        {logger.silent && ` · ${words.coach.silent}`}
      </span>
      {mayChange && (
        <Opens title={words.forms.changeNamed(logger.name)}>
          <ChangeLogger logger={logger} onChange={onChange} />
        </Opens>
      )}
    </li>
  );
}

/** Who reports this coach, when each was last heard, and for staff how to add one. */
export function Loggers({ coach, mayChange, asked, onChange }: LoggersProps) {
  const [made, setMade] = useState<LoggerWithToken | null>(null);
  return (
    <section aria-labelledby="loggers">
      <h2 id="loggers">{words.coach.loggers}</h2>
      <Works items={coach.loggers} none={words.coach.noLoggers}>
        {(logger) => <LoggerLine key={logger.id} logger={logger} mayChange={mayChange} onChange={onChange} />}
      </Works>
      {made !== null && <NewToken made={made} room={coach.rooms[0]} onClose={() => setMade(null)} />}
      {mayChange && (
        <Opens title={words.forms.addLogger} asked={asked}>
          <LoggerForm
            coachId={coach.id}
            logger={null}
            onDone={(token) => {
              setMade(token);
              onChange();
            }}
          />
        </Opens>
      )}
    </section>
  );
}
