import { stringify } from 'uuid';

/** The length of a UUID. */
export const ID_BYTES = 16;

/** The id that these bytes are; where they are none, one that belongs to nobody, for which a look-up finds nothing. */
export function idOfBytes(bytes: Uint8Array): string {
  try {
    return stringify(bytes);
  } catch {
    return '00000000-0000-0000-0000-000000000000';
  }
}
