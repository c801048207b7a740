import { call } from '../api/client.ts';
import { words } from '../words.ts';

/** Has the service write what the path asks for as CSV, and the browser save it as a file. */
export async function saveCsv(path: string): Promise<void> {
  const text = await call<string>(path, { accept: 'text/csv' });
  // Spreadsheets take a file for UTF-8 only where it begins with this mark.
  const file = new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' });
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = words.lot.fileName;
  link.click();
  URL.revokeObjectURL(link.href);
}
