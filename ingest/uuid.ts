const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

/** Whether Postgres takes the text for an id. */
export function isUuid(text: string): boolean {
  return UUID.test(text);
}
