import type { Role } from '../api/types.ts';
import { words } from '../words.ts';

/** Every role with its name, as a choice. */
export const ROLE_CHOICES: readonly (readonly [Role, string])[] = [
  ['dealer', words.roles.dealer],
  ['technician', words.roles.technician],
  ['owner', words.roles.owner],
];
