import { call } from './client.ts';

const LINE_END = '\r\n';

/** Has the service write what the paths ask for as CSV, and the browser save it all as one file. */
export async function saveCsv(paths: readonly string[], fileName: string): Promise<void> {
  const texts: string[] = [];
  for (const path of paths) texts.push(await call<string>(path, { accept: 'text/csv' }));
  // The titles of the columns stand in the first alone.
  const [first, ...others] = texts;
  const rows = others.map((text) => text.slice(text.indexOf(LINE_END) + LINE_END.length));
  // Spreadsheets take a file for UTF-8 only where it begins with this mark.
  const file = new Blob(['\ufeff', first, ...rows], { type: 'text/csv;charset=utf-8' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = fileName;
  link.click();
  URL.revokeObjectURL(link.href);
}
