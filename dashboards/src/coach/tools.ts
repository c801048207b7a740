/** The id of what can be added to a coach and changed of it: fetched later than what leads there. */
export const TOOLS = 'tools';
