/** A recording as a clamp meter with two channels writes it down: signed, ten samples a second, decimal commas. */
export function clampCsv(header = 't (s);Ch1;Ch2;U [V]'): string {
  const amps = [...part(5, 20, 9), ...part(30, 20, -8), ...part(3, 0, 0)];
  const rows = amps.map((value, i) => [i / 10, value, 0.9 * value, 12.6].map(comma).join(';'));
  return [header, ...rows].join('\r\n');
}

function part(restS: number, driveS: number, amps: number): number[] {
  const rest = Array.from({ length: restS * 10 }, (_, i) => 0.02 + 0.01 * Math.sin(i));
  const drive = Array.from({ length: driveS * 10 }, (_, i) => (i < 2 ? 2.5 : 1) * amps + 0.1 * Math.sin(i));
  return [...rest, ...drive];
}

const comma = (value: number) => String(Math.round(value * 1000) / 1000).replace('.', ',');

export const csvFile = (text: string, name = 'clamp.csv') => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(text),
});
