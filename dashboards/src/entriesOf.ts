/** The keys and values of a record that holds every key of its type and no other, as a table of words does. */
export function entriesOf<Key extends string, Value>(record: Readonly<Record<Key, Value>>): [Key, Value][] {
  // Of any object TypeScript knows only that its keys are strings: it may hold more than its type says.
  return Object.entries(record) as [Key, Value][];
}
