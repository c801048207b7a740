import type { Room } from '../api/types.ts';
import { Delete } from '../forms/Delete.tsx';
import { Opens } from '../forms/Opens.tsx';
import { RoomForm } from '../forms/RoomForm.tsx';
import { navigate } from '../router.ts';
import { words } from '../words.ts';

interface RoomToolsProps {
  readonly room: Room;
  readonly onChange: () => void;
}

/** For staff: changing and deleting the room. */
export function RoomTools({ room, onChange }: RoomToolsProps) {
  const say = words.forms;
  return (
    <section aria-labelledby="tools" class="tools">
      <h2 id="tools">{say.toolsOfRoom}</h2>
      <Opens title={say.changeRoom}>
        <RoomForm key={room.updatedAt} coachId={room.coachId} room={room} onDone={onChange} />
      </Opens>
      <Opens title={say.deleteRoom}>
        <Delete
          path={`/rooms/${room.id}`}
          name={room.name}
          means={say.deleteRoomMeans}
          onDone={() => navigate(`/coaches/${room.coachId}`)}
        />
      </Opens>
    </section>
  );
}
