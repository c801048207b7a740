import type { CoachOverview } from '../api/types.ts';
import { words } from '../words.ts';

interface FirstStepsProps {
  readonly coach: CoachOverview;
  readonly mayChange: boolean;
  /** Opens the form of a room. */
  readonly addRoom: () => void;
  /** Opens the form of a logger. */
  readonly addLogger: () => void;
}

/** What comes next for a coach that nothing is known of yet: its first room, then what brings its strokes. */
export function FirstSteps({ coach, mayChange, addRoom, addLogger }: FirstStepsProps) {
  const say = words.coach;
  const [first] = coach.rooms;
  if (first === undefined)
    return (
      <section class="empty">
        <h2>{say.noRooms}</h2>
        {mayChange ? (
          <>
            <p>{say.noRoomsHint}</p>
            <button type="button" onClick={addRoom}>
              {say.addFirstRoom}
            </button>
          </>
        ) : (
          <p>{say.noRoomsOwner}</p>
        )}
      </section>
    );
  const isSilent = coach.loggers.length === 0 && coach.rooms.every(({ strokes }) => strokes === 0);
  if (!isSilent || !mayChange) return null;
  return (
    <section class="empty">
      <h2>{say.noStrokes}</h2>
      <p>{say.noStrokesHint}</p>
      <p class="actions">
        <button type="button" onClick={addLogger}>
          {say.addFirstLogger}
        </button>
        <a href={`/rooms/${first.id}/upload`}>{words.strokes.addRecording}</a>
      </p>
    </section>
  );
}
