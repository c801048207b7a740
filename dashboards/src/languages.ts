/**
 * Languages whose numbers and dates differ enough to be chosen, each as it calls itself; any other tag can be set over the
 * API. Asking the browser for the names holds a slow phone up longer than the rest of the page.
 */
const LANGUAGES: ReadonlyMap<string, string> = new Map([
  ['en-US', 'American English'],
  ['en-GB', 'British English'],
  ['en-CA', 'Canadian English'],
  ['en-AU', 'Australian English'],
  ['de-DE', 'Deutsch (Deutschland)'],
  ['es-ES', 'español de España'],
  ['es-US', 'español (Estados Unidos)'],
  ['fr-CA', 'français canadien'],
  ['fr-FR', 'français (France)'],
  ['nl-NL', 'Nederlands (Nederland)'],
  ['sv-SE', 'svenska (Sverige)'],
  ['he-IL', 'עברית (ישראל)'],
  ['ar-EG', 'العربية (مصر)'],
]);

/** Tags with their names, the one that is set among them. */
export function languagesWith(set: string | null): [string, string][] {
  if (set === null || LANGUAGES.has(set)) return [...LANGUAGES];
  const name = new Intl.DisplayNames([set], { type: 'language' }).of(set) ?? set;
  return [...LANGUAGES, [set, name]];
}
