import type { FieldFault } from '../decodeError.ts';

/**
 * A stroke of which its form could read only a part: it is rejected with these faults, whose pointers start at the
 * body, and what could be read tells whose it is.
 */
export class PartlyRead {
  readonly value: unknown;
  readonly faults: readonly FieldFault[];

  constructor(value: unknown, faults: readonly FieldFault[]) {
    this.value = value;
    this.faults = faults;
  }
}

/** Of a body, one stroke or an array of them, with the faults in it: each stroke that has any becomes a `PartlyRead`. */
export function setFaultyAside(body: unknown, faults: readonly FieldFault[]): unknown {
  if (faults.length === 0) return body;
  if (!Array.isArray(body)) return new PartlyRead(body, faults);
  const byStroke = new Map<string, FieldFault[]>();
  for (const fault of faults) {
    const place = fault.pointer.split('/', 2)[1];
    const its = byStroke.get(place);
    if (its === undefined) byStroke.set(place, [fault]);
    else its.push(fault);
  }
  return body.map((stroke: unknown, i) => {
    const its = byStroke.get(String(i));
    return its === undefined ? stroke : new PartlyRead(stroke, its);
  });
}
