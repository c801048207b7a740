import type { CallProblem } from '../../api/client.ts';

/** Whether a fault is that of a field, or of a part of it: `/sides/1` is one of `/sides`. */
export const isOf = (fault: string, field: string): boolean =>
  fault === field || fault.startsWith(`${field}/`);

/** What is left to say above a form whose fields at these JSON pointers each say what is wrong with them. */
export function untold(problem: CallProblem | null, fields: readonly string[]): CallProblem | null {
  if (problem === null || problem.fields.length === 0) return problem;
  const isTold = problem.fields.every(({ pointer }) => fields.some((field) => isOf(pointer, field)));
  return isTold ? null : problem;
}
