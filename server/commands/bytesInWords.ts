export function bytesInWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  const units = ['kB', 'MB', 'GB', 'TB'];
  let value = bytes / 1000;
  while (value >= 1000 && units.length > 1) {
    value /= 1000;
    units.shift();
  }
  return `${value.toFixed(value < 10 ? 1 : 0)} ${units[0]}`;
}
