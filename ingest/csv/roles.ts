import { parse } from 'csv-parse/sync';
import { DecodeError } from '../decodeError.ts';
import type { Column } from './header.ts';

/** A column as people say it: `time/ms`, `side/front/A`, `supply/V`, `ambient/C`, `ambient/F`, `none`. */
export interface Role {
  readonly kind: Column['kind'];
  /** Of a side alone. */
  readonly side: string | null;
  readonly unit: string | null;
}

const LONGEST = 2000;
const SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, us: 1e-6 };
const PER: Readonly<Record<string, 1 | 1000>> = { A: 1, mA: 1000, V: 1, mV: 1000 };

export function roleOf(column: Column): Role {
  const none = { kind: column.kind, side: null };
  switch (column.kind) {
    case 'time':
      return { ...none, unit: column.unitS === 1 ? 's' : column.unitS === 1e-3 ? 'ms' : 'us' };
    case 'side':
      return { ...none, side: column.side, unit: column.per === 1 ? 'A' : 'mA' };
    case 'supply':
      return { ...none, unit: column.per === 1 ? 'V' : 'mV' };
    case 'ambient':
      return { ...none, unit: column.scale };
    case 'none':
      return { ...none, unit: null };
  }
}

/**
 * What the sender says each column is, in their order, as one line of CSV: it goes before what the titles say. Throws
 * `DecodeError` at `/columns`.
 */
export function readRoles(text: string): Column[] {
  const roles = fieldsOf(text);
  return roles.map((role, i) => {
    const column = columnOf(role.trim());
    if (column !== null) return column;
    const forms = 'time/s, time/ms, side/NAME/A, side/NAME/mA, supply/V, ambient/C, ambient/F or none';
    throw DecodeError.at('/columns', `Column ${i + 1} must be one of ${forms}.`);
  });
}

function fieldsOf(text: string): string[] {
  try {
    // Without options for columns the library answers rows of texts.
    const [fields = []]: string[][] = text.length > LONGEST ? [] : parse(text, { to: 1 });
    if (fields.length > 0) return fields;
  } catch (error) {
    throw new DecodeError([{ pointer: '/columns', detail: 'It must be one line of CSV.' }], { cause: error });
  }
  throw DecodeError.at('/columns', `It must be one line of CSV of at most ${LONGEST} characters.`);
}

function columnOf(role: string): Column | null {
  const [kind, ...rest] = role.split('/');
  const unit = rest.at(-1) ?? '';
  if (kind === 'side') {
    const side = rest.slice(0, -1).join('/').trim();
    return side !== '' && (unit === 'A' || unit === 'mA') ? { kind, side, per: PER[unit] } : null;
  }
  if (kind === 'none' && rest.length === 0) return { kind };
  if (rest.length !== 1) return null;
  if (kind === 'time' && Object.hasOwn(SECONDS, unit)) return { kind, unitS: SECONDS[unit] };
  if (kind === 'supply' && (unit === 'V' || unit === 'mV')) return { kind, per: PER[unit] };
  return kind === 'ambient' && (unit === 'C' || unit === 'F') ? { kind, scale: unit } : null;
}
