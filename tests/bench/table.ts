/** One line of the result: a ratio within this run (or a plain figure, where `what` names its unit) and its aim. */
export interface Line {
  readonly what: string;
  readonly ratio: number;
  readonly aim: string;
}

export function printTable(title: string, lines: readonly Line[]): void {
  console.log(`\n${title}`);
  const width = Math.max(...lines.map(({ what }) => what.length));
  for (const { what, ratio, aim } of lines) {
    const figure = ratio >= 100 ? ratio.toFixed(0) : ratio.toPrecision(3);
    console.log(`  ${what.padEnd(width)}  ${figure.padStart(8)}${aim === '' ? '' : `   aim ${aim}`}`);
  }
}
