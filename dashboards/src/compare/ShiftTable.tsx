import type { ComparedShift, MeasureTitle } from '../api/types.ts';
import { quantity } from '../format.ts';
import { compareWords } from '../words/compare.ts';
import { Interval } from './Interval.tsx';
import { shiftWords } from './shiftWords.ts';

interface ShiftTableProps {
  readonly caption: string;
  readonly shifts: readonly ComparedShift[];
  readonly titles: readonly MeasureTitle[];
}

/** Every measure before and after, with its shift as a picture and in words. */
export function ShiftTable({ caption, shifts, titles }: ShiftTableProps) {
  const say = compareWords;
  return (
    <table class="shifts">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{say.measure}</th>
          <th scope="col" class="number">
            {say.before}
          </th>
          <th scope="col" class="number">
            {say.after}
          </th>
          <th scope="col">{say.change}</th>
        </tr>
      </thead>
      <tbody>
        {shifts.map((shift) => (
          <tr key={shift.measure}>
            <th scope="row">{titles.find(({ name }) => name === shift.measure)?.title ?? shift.measure}</th>
            <td class="number">{quantity(shift.before, shift.unit)}</td>
            <td class="number">{quantity(shift.after, shift.unit)}</td>
            <td>
              <Interval shift={shift} />
              <span class="shift-words">{shiftWords(shift) ?? say.notTold}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
