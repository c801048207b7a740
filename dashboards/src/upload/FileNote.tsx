import { plainNumber } from '../format.ts';
import { uploadWords } from '../words/upload.ts';
import { words } from '../words.ts';
import { type CsvFile, MOST_BYTES, type WrongFile } from './readCsvFile.ts';

interface NoteProps {
  readonly file: CsvFile | null;
  /** How many lines above its titles are passed over. */
  readonly passedLines: number;
  readonly refused: { readonly why: WrongFile; readonly file: File } | null;
}

const MEGABYTE = 1024 * 1024;

function sizeText(bytes: number): string {
  const say = uploadWords;
  return bytes >= MEGABYTE
    ? say.megabytes(plainNumber(bytes / MEGABYTE))
    : say.kilobytes(plainNumber(bytes / 1024));
}

function whyText(why: WrongFile, bytes: number): string {
  const say = uploadWords.wrong;
  return why === 'large' ? say.large(sizeText(bytes), sizeText(MOST_BYTES)) : say[why];
}

/** Which file is looked at, and why another one could not be. */
export function FileNote({ file, passedLines, refused }: NoteProps) {
  const say = uploadWords;
  return (
    <>
      {refused !== null && (
        <div class="failure" role="alert">
          <p>
            <strong>{say.wrong.title}: </strong>
            <span dir="auto">{say.chosen(refused.file.name, sizeText(refused.file.size))}</span>
          </p>
          <p>{whyText(refused.why, refused.file.size)}</p>
          <p>{say.wrong.kept}</p>
        </div>
      )}
      {file !== null && (
        <p class="about">
          <bdi>{say.chosen(file.name, sizeText(file.bytes))}</bdi>
          {passedLines > 0 && `${words.joint}${say.passedLines(passedLines)}`}
          {file.converted && `${words.joint}${say.converted}`}
        </p>
      )}
    </>
  );
}
