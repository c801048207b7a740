import type { Coach, CoachOverview } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Loaded } from '../components/coming/states.tsx';
import { CoachForm } from '../forms/CoachForm.tsx';
import { Delete } from '../forms/Delete.tsx';
import { Opens } from '../forms/Opens.tsx';
import { RoomForm } from '../forms/RoomForm.tsx';
import { navigate } from '../router.ts';
import { words } from '../words.ts';

interface CoachToolsProps {
  readonly coach: CoachOverview;
  /** How often the page asked for the form of a room. */
  readonly asked: number;
  readonly onChange: () => void;
}

/** For staff: what can be added to a coach, changed of it, and deleting it. */
export function CoachTools({ coach, asked, onChange }: CoachToolsProps) {
  const say = words.forms;
  const full = useLoad<Coach>(`/coaches/${coach.id}`);
  const changed = () => {
    full.reload();
    onChange();
  };
  return (
    <section aria-labelledby="tools" class="tools">
      <h2 id="tools">{say.toolsOfCoach}</h2>
      <Opens title={say.addRoom} asked={asked}>
        <RoomForm coachId={coach.id} room={null} onDone={onChange} />
      </Opens>
      <Opens title={say.changeCoach}>
        <Loaded load={full}>
          {(value) => <CoachForm key={value.updatedAt} coach={value} onDone={changed} />}
        </Loaded>
      </Opens>
      <Opens title={say.deleteCoach}>
        <Delete
          path={`/coaches/${coach.id}`}
          name={coach.name}
          means={say.deleteCoachMeans}
          onDone={() => navigate('/')}
        />
      </Opens>
    </section>
  );
}
