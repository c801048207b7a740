import { RIG_MEASURES, type RigMeasure, type RigResult } from './playRig.ts';

type Part = 'healthy' | 'faulty';

/** Share of the strokes of all results that lie beyond the limits of a measure, 0 to 1. */
export function shareBeyond(results: readonly RigResult[], measure: RigMeasure, part: Part): number {
  const beyond = results.reduce((sum, result) => sum + result.beyond[measure][part], 0);
  return beyond / results.reduce((sum, result) => sum + result.strokes[part], 0);
}

/** What the rig's run came to, as a table for each measure. */
export function rigTable(results: readonly RigResult[]): string {
  return RIG_MEASURES.map((measure) => measureTable(results, measure)).join('\n\n');
}

function measureTable(results: readonly RigResult[], measure: RigMeasure): string {
  const rows = results.map((result) => [
    `${result.loadKgf} kgf`,
    result.direction,
    `${result.strokes.baseline} + ${result.strokes.healthy} + ${result.strokes.faulty}`,
    percent(shareBeyond([result], measure, 'healthy')),
    percent(shareBeyond([result], measure, 'faulty')),
    raised(result.raisedAfter),
  ]);
  const all = ['all', '', '', percent(shareBeyond(results, measure, 'healthy'))];
  return aligned([
    [measure, '', 'strokes', 'healthy beyond', 'faulty beyond', 'rising-draw raised after'],
    ...rows,
    [...all, percent(shareBeyond(results, measure, 'faulty')), ''],
  ]);
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function raised(after: RigResult['raisedAfter']): string {
  if (after === null) return 'never';
  if (after === 'false-alarm') return 'on a healthy stroke';
  return `${after.ofLoad} faulty strokes (${after.ofDirection} of this direction)`;
}

function aligned(rows: readonly (readonly string[])[]): string {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i]))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
