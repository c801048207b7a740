/** One line of the result: a ratio within this run (or a plain figure, where `what` names its unit) and its aim. */
export interface Line {
  readonly what: string;
  readonly ratio: number;
  /** Such as `>= 0.8`; empty where there is none. */
  readonly aim: string;
}

export function printTable(title: string, lines: readonly Line[]): void {
  console.log(`\n${title}`);
  const width = Math.max(...lines.map(({ what }) => what.length));
  for (const { what, ratio, aim } of lines) {
    const figure = ratio >= 100 ? ratio.toFixed(0) : ratio.toPrecision(3);
    const beside = aim === '' ? '' : `   aim ${aim}   ${meets(ratio, aim) ? 'met' : 'not met'}`;
    console.log(`  ${what.padEnd(width)}  ${figure.padStart(8)}${beside}`);
  }
}

function meets(ratio: number, aim: string): boolean {
  const [, relation, bound] = /^(<|<=|>|>=) ([\d.]+)$/.exec(aim) ?? [];
  switch (relation) {
    case '<':
      return ratio < Number(bound);
    case '<=':
      return ratio <= Number(bound);
    case '>':
      return ratio > Number(bound);
    case '>=':
      return ratio >= Number(bound);
    default:
      throw new RangeError(`"${aim}" is no aim.`);
  }
}
