import { useRef, useState } from 'preact/hooks';
import { type CsvFile, readCsvFile, type WrongFile } from './readCsvFile.ts';

interface Refused {
  readonly why: WrongFile;
  readonly file: File;
}

interface ChosenFile {
  /** The latest file that could be read; null: none yet. */
  readonly file: CsvFile | null;
  /** The latest choice, where it could not be read. */
  readonly refused: Refused | null;
  readonly take: (chosen: File) => Promise<void>;
}

interface Told {
  /** Another file was chosen and looked into, whether or not it could be read. */
  readonly onLooked: () => void;
  /** It could be read. */
  readonly onRead: () => void;
}

/** The file that a person chose. One that cannot be read leaves the one before it as it is. */
export function useChosenFile({ onLooked, onRead }: Told): ChosenFile {
  const [file, setFile] = useState<CsvFile | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const latest = useRef<File | null>(null);
  const take = async (chosen: File) => {
    latest.current = chosen;
    const read = await readCsvFile(chosen);
    // Another was chosen while this one was being read.
    if (latest.current !== chosen) return;
    onLooked();
    if (typeof read === 'string') {
      setRefused({ why: read, file: chosen });
      return;
    }
    setRefused(null);
    setFile(read);
    onRead();
  };
  return { file, refused, take };
}
