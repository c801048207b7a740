import { useState } from 'preact/hooks';
import { call } from '../api/client.ts';
import { oneCoach } from '../api/questions.ts';
import type { CoachOverview, Page, Room, StrokeOutcome, StrokesPreview } from '../api/types.ts';
import { useLoad } from '../api/useLoad.ts';
import { Failure, Waiting } from '../components/coming/states.tsx';
import { NotThere } from '../components/frame/NotThere.tsx';
import { PageTitle } from '../components/frame/PageTitle.tsx';
import { RoomTrail } from '../components/frame/RoomTrail.tsx';
import { useSending } from '../components/sending/useSending.ts';
import { ColumnsTable } from '../upload/ColumnsTable.tsx';
import { Corrected } from '../upload/Corrected.tsx';
import { type Corrections, directionsOf, NO_CORRECTIONS, queryOf } from '../upload/corrections.ts';
import { DropPlace } from '../upload/DropPlace.tsx';
import { FileNote } from '../upload/FileNote.tsx';
import { Outcomes } from '../upload/Outcomes.tsx';
import { Problems } from '../upload/Problems.tsx';
import { RecordingChart } from '../upload/RecordingChart.tsx';
import type { CsvFile } from '../upload/readCsvFile.ts';
import { StrokesTable } from '../upload/StrokesTable.tsx';
import { useChosenFile } from '../upload/useChosenFile.ts';
import { usePreview } from '../upload/usePreview.ts';
import { uploadWords } from '../words/upload.ts';
import { words } from '../words.ts';

/** Asked to store what a preview showed. */
function store(roomId: string, file: CsvFile, said: Corrections, preview: StrokesPreview) {
  const query = queryOf(said, preview);
  query.set('roomId', roomId);
  query.set('key', preview.key);
  return call<{ results: StrokeOutcome[] }>(`/strokes?${query}`, { method: 'POST', csv: file.csv });
}

function UploadHere({ room }: { readonly room: Room }) {
  const say = uploadWords;
  const [said, setSaid] = useState(NO_CORRECTIONS);
  const [results, setResults] = useState<readonly StrokeOutcome[] | null>(null);
  const { busy: storing, problem: notStored, send, forget } = useSending();
  const correct = (part: Partial<Corrections>) => setSaid((held) => ({ ...held, ...part }));
  const { file, refused, take } = useChosenFile({
    onLooked: forget,
    onRead: () => {
      setResults(null);
      // Columns and strokes are each file's own; its start and rate are likely to be told again.
      correct({ columns: null, directions: [] });
    },
  });
  const preview = usePreview(room.id, file, said);
  const { value } = preview;
  const directions = directionsOf(said, value);
  const isReady = value !== null && value.strokes.length > 0 && value.problems.length === 0 && !preview.busy;
  const keep = async () => {
    if (file === null || value === null) return;
    await send(async () => setResults((await store(room.id, file, said, value)).results));
  };

  return (
    <>
      <DropPlace another={file !== null} onFile={take} />
      <FileNote file={file} passedLines={value?.passedLines ?? 0} refused={refused} />
      {file !== null && preview.busy && (
        <p class="about" role="status">
          {say.reading}
        </p>
      )}
      {preview.problem !== null && <Failure problem={preview.problem} retry={preview.reload} />}
      {results !== null && <Outcomes results={results} roomId={room.id} />}
      {value !== null && results === null && (
        <>
          {value.sides.length > 0 && <RecordingChart preview={value} room={room} />}
          <ColumnsTable
            room={room}
            columns={value.columns}
            chosen={said.columns}
            onChange={(columns) => correct({ columns, directions: [] })}
          />
          <Corrected preview={value} said={said} onChange={correct} />
          {value.strokes.length > 0 && (
            <StrokesTable
              strokes={value.strokes}
              directions={directions}
              onChange={(index, direction) =>
                correct({
                  directions: value.strokes.map((_, i) =>
                    i === index ? direction : (said.directions[i] ?? null),
                  ),
                })
              }
            />
          )}
          <Problems preview={value} directions={directions} />
          {notStored !== null && <Failure problem={notStored} />}
          <button
            type="button"
            class="main-action"
            disabled={!isReady}
            aria-disabled={storing}
            onClick={keep}
          >
            {storing ? say.storing : say.store(value.strokes.length)}
          </button>
        </>
      )}
    </>
  );
}

/** A recording from a file, looked at before it is stored. */
export function UploadPage({ id }: { readonly id: string }) {
  const room = useLoad<Room>(`/rooms/${encodeURIComponent(id)}`);
  const coaches = useLoad<Page<CoachOverview>>(room.value === null ? null : oneCoach(room.value.coachId));
  const coach = coaches.value?.items[0];
  if (room.value === null) {
    if (room.problem === null) return <Waiting />;
    return <NotThere problem={room.problem} retry={room.reload} say={words.room} />;
  }
  return (
    <>
      <RoomTrail coach={coach ?? null} room={room.value} />
      <PageTitle text={uploadWords.title} />
      {coach?.role === 'owner' ? (
        <p class="lead">{uploadWords.notOwners}</p>
      ) : (
        <>
          <p class="lead">{uploadWords.lead}</p>
          <p class="cautions">{uploadWords.before}</p>
          <UploadHere room={room.value} />
        </>
      )}
    </>
  );
}
