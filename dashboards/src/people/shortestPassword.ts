/** Characters that a password has at the least: the service refuses fewer. */
export const SHORTEST_PASSWORD = 12;
