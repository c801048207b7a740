import type { GrantBody } from '../schemas/access.ts';
import type { CoachBody } from '../schemas/coach.ts';
import type { LoggerBody } from '../schemas/logger.ts';
import type { RoomBody } from '../schemas/room.ts';
import type { ServiceBody } from '../schemas/service.ts';
import type { Role } from '../schemas/session.ts';
import type { StrokeRecord } from './simulator/strokeRecord.ts';

/** One who can sign in to the demo. */
interface DemoPerson {
  readonly email: string;
  readonly name: string;
  readonly role: Role;
}

/** One of another account, who was given one coach of this one to see. */
export interface DemoGuest extends Omit<DemoPerson, 'role'> {
  readonly role: GrantBody['role'];
  readonly coach: string;
}

/** The body of contract section 4, less the `roomId`, which is known once the room is stored. */
export interface DemoStroke extends StrokeRecord {
  readonly key: string;
}

export interface DemoRoom {
  readonly room: RoomBody;
  /** What there is to find in this room, for the reader of the demo. */
  readonly story: string;
  readonly services: readonly ServiceBody[];
  /** In time order, all by the coach's one logger. */
  readonly strokes: readonly DemoStroke[];
}

export interface DemoCoach {
  readonly coach: CoachBody;
  readonly logger: LoggerBody;
  /** Each made when it is come to: it takes a while, in which nothing else is done. */
  readonly rooms: Iterable<DemoRoom>;
}

/** Everything that the demo puts into an empty database, in the contract's own JSON forms. */
export interface DemoScenario {
  readonly accountName: string;
  /** One password for all of them. */
  readonly password: string;
  readonly people: readonly DemoPerson[];
  readonly guests: readonly DemoGuest[];
  readonly coaches: readonly DemoCoach[];
}
