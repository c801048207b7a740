/** The service takes no more in one piece. */
export const MOST_BYTES = 32 * 1024 * 1024;

/** Why a file is no CSV, before the service is asked. */
export type WrongFile = 'empty' | 'large' | 'binary' | 'unread';

export interface CsvFile {
  readonly name: string;
  readonly bytes: number;
  /** In UTF-8. */
  readonly csv: Blob;
  /** It was in another alphabet, which had to be guessed. */
  readonly converted: boolean;
}

/** Reads a chosen file as text, whatever program wrote it; answers why it cannot be one. */
export async function readCsvFile(file: File): Promise<CsvFile | WrongFile> {
  if (file.size === 0) return 'empty';
  if (file.size > MOST_BYTES) return 'large';
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) return 'unread';
  const decoded = decode(new Uint8Array(bytes));
  if (decoded === null) return 'binary';
  const csv = new Blob([decoded.text], { type: 'text/csv' });
  return { name: file.name, bytes: file.size, csv, converted: decoded.guessed };
}

interface Decoded {
  readonly text: string;
  readonly guessed: boolean;
}

function decode(bytes: Uint8Array): Decoded | null {
  const [first, second] = bytes;
  // Spreadsheets mark their Unicode texts so.
  if (first === 0xff && second === 0xfe)
    return { text: new TextDecoder('utf-16le').decode(bytes), guessed: false };
  if (first === 0xfe && second === 0xff)
    return { text: new TextDecoder('utf-16be').decode(bytes), guessed: false };
  if (isBinary(bytes)) return null;
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), guessed: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), guessed: true };
  }
}

const LOOKED_AT_BYTES = 65_536;
const TAB = 9;
const RETURN = 13;
const ESCAPE = 27;
const SPACE = 32;

/** No text holds control characters but tabs and the ends of lines. */
function isBinary(bytes: Uint8Array): boolean {
  return bytes
    .subarray(0, LOOKED_AT_BYTES)
    .some((byte) => byte < TAB || (byte > RETURN && byte < SPACE && byte !== ESCAPE));
}
