import type { Role } from '../api/types.ts';
import { peopleWords } from '../words/people.ts';

/** Every role with its name, as a choice. */
export const ROLE_CHOICES: readonly (readonly [Role, string])[] = [
  ['dealer', peopleWords.roles.dealer],
  ['technician', peopleWords.roles.technician],
  ['owner', peopleWords.roles.owner],
];
