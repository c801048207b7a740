import type { ComparedGroup } from './compared.ts';

/** A sentence that a customer understands: what the running current did, side by side, and how sure that is. */
export function compareSentence(groups: readonly ComparedGroup[], sides: readonly string[]): string {
  const told = groups.flatMap((group) => {
    const shift = group.shifts.find(({ measure }) => measure === 'runningAmps');
    return shift === undefined || shift.shift === null || shift.before === null
      ? []
      : [
          {
            group,
            before: shift.before,
            shift: shift.shift,
            lower: shift.lower ?? 0,
            upper: shift.upper ?? 0,
            sure: shift.excludesZero,
          },
        ];
  });
  if (told.length === 0) {
    return 'There are not yet two strokes before and two after that go the same ways: no comparison can be made.';
  }
  const sure = told.filter((group) => group.sure);
  if (sure.length === 0) {
    return 'The running current is not told apart from before the work: any change is smaller than what the strokes differ by among themselves, or by their weather and supply.';
  }
  const sentences = sure.map(({ group, before, shift, lower, upper }) => {
    const who = sides.length > 1 ? `the ${group.side} side` : 'the motor';
    const doing = group.direction === 'extend' ? 'going out' : 'coming in';
    const percent = (amps: number) => `${Math.abs(Math.round((100 * amps) / before))} %`;
    const less = shift < 0 ? 'less' : 'more';
    const [near, far] = [lower, upper].sort((a, b) => Math.abs(a) - Math.abs(b));
    // A change that is sure is not told as nothing: its nearer end may still round to it.
    const between =
      percent(near) === '0 %' ? `up to ${percent(far)}` : `between ${percent(near)} and ${percent(far)}`;
    return `${doing}, ${who} draws ${percent(shift)} ${less} than before (${between} ${less})`;
  });
  const text = sentences.join('; ');
  return `${text[0].toUpperCase()}${text.slice(1)}.`;
}
