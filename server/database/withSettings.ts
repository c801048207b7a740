/** A database URL by which every connection has these settings, whatever the server, the database or the URL says of them. */
export function withSettings(url: string, settings: Readonly<Record<string, string>>): string {
  const parsed = new URL(url);
  const before = parsed.searchParams.get('options');
  const ours = Object.entries(settings).map(([name, value]) => `-c ${name}=${escaped(value)}`);
  // The driver takes the URL's options for all that there are, and the last of a name holds.
  parsed.searchParams.set('options', [before, ...ours].filter(Boolean).join(' '));
  return parsed.href;
}

/** A blank would end the option. */
function escaped(value: string): string {
  return value.replaceAll(/[\\ ]/g, '\\$&');
}
