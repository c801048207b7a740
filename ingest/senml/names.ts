/** What a record's name says. */
export interface NamedPlace {
  readonly roomId: string | null;
  readonly key: string | null;
  /** The last part: a side for amperes, `direction` and the like for texts. */
  readonly last: string;
}

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}(?=\/)/i;

/**
 * Takes a resolved name apart: `<roomId>/<side>` or `<roomId>/<key>/<side>`, behind whatever the sender needs to make
 * its names unique (`urn:dev:mac:0024befffe804ff1:`); a name without the id of a room ends in the side.
 */
export function placeNamed(name: string): NamedPlace {
  const room = UUID.exec(name);
  const rest = room === null ? name : name.slice(room.index + room[0].length + 1);
  const end = Math.max(rest.lastIndexOf('/'), room === null ? rest.lastIndexOf(':') : -1);
  return {
    roomId: room === null ? null : room[0],
    key: room === null || end < 1 ? null : rest.slice(0, end),
    last: rest.slice(end + 1),
  };
}
