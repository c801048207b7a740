/** What several places ask, word for word: answers are kept, and asked for early, by the question. */

export const SESSION = '/session';
export const SETTINGS = '/settings';
/** Two tell whether there is only one. */
export const FIRST_FEW_COACHES = '/overview?limit=2';
/** When the person last looked over the coaches on an earlier visit. */
export const LAST_LOOK = '/overview/look';
export const MEASURES = '/measures';

export const oneCoach = (id: string): string => `/overview?coaches=${encodeURIComponent(id)}`;
export const room = (id: string): string => `/rooms/${encodeURIComponent(id)}`;
export const roomStatus = (id: string): string => `${room(id)}/status`;
