import { DecodeError } from '../decodeError.ts';

const UTF8 = new TextDecoder('utf-8', { fatal: true });
/** What spreadsheets call ANSI: it has a letter for every byte. */
const WINDOWS = new TextDecoder('windows-1252');

/**
 * The text of a CSV: in UTF-8, or as spreadsheets write it besides, in UTF-16 behind its mark or in Windows-1252, where
 * a degree sign in a title is no UTF-8. Throws `DecodeError` where it is no text: a picture or a program is none.
 */
export function textOfTable(bytes: Uint8Array): string {
  const unicode = unicodeOf(bytes);
  if (unicode !== null) return unicode;
  const text = WINDOWS.decode(bytes);
  if (isOfLines(text)) return text;
  throw DecodeError.at('', 'The body is no text in UTF-8.');
}

/** Null where it is no Unicode. */
function unicodeOf(bytes: Uint8Array): string | null {
  try {
    if (bytes[0] === 0xff && bytes[1] === 0xfe) return utf16('utf-16le', bytes);
    if (bytes[0] === 0xfe && bytes[1] === 0xff) return utf16('utf-16be', bytes);
    return UTF8.decode(bytes);
  } catch (error) {
    // What a decoder says of bytes that are none of its own.
    if (error instanceof TypeError) return null;
    throw error;
  }
}

function utf16(encoding: 'utf-16le' | 'utf-16be', bytes: Uint8Array): string {
  return new TextDecoder(encoding, { fatal: true }).decode(bytes);
}

const LOOKED_AT_LETTERS = 65_536;

/** Whether nothing stands in it but letters, tabs and the ends of lines. */
function isOfLines(text: string): boolean {
  for (let i = 0; i < Math.min(text.length, LOOKED_AT_LETTERS); i++) {
    const code = text.charCodeAt(i);
    if (code < 9 || (code > 13 && code < 32)) return false;
  }
  return true;
}
