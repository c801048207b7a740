import { isOtherUnit, type Unit, unitNamed } from './units.ts';

/** What a column holds. `per` is how many of the column's unit make one ampere or volt; `unitS` seconds to a unit. */
export type Column =
  | { readonly kind: 'time'; readonly unitS: number }
  | { readonly kind: 'side'; readonly side: string; readonly per: 1 | 1000 }
  | { readonly kind: 'supply'; readonly per: 1 | 1000 }
  | { readonly kind: 'ambient'; readonly scale: 'C' | 'F' }
  | { readonly kind: 'none'; readonly holdsText?: true };

/** As meters write them that were set to another language, too. */
const TIME_WORDS = new Set([
  ...['t', 'time', 'timestamp', 'clock', 'date', 'datetime', 'date time', 'elapsed', 'epoch'],
  ...['zeit', 'uhrzeit', 'zeitstempel', 'datum', 'temps', 'heure', 'tiempo', 'hora', 'tempo', 'tijd', 'tid'],
]);
const SUPPLY_WORDS = new Set([
  ...['supply', 'voltage', 'battery'],
  ...['spannung', 'tension', 'tensión', 'tensione', 'spanning', 'batterie'],
]);
const AMBIENT_WORDS = new Set(['ambient', 'temperature', 'temp', 'temperatur', 'température']);
/** A letter that is a unit of temperature behind the words above alone: a side may be called so. */
const FAHRENHEIT = 'f';
const CURRENT_WORDS = new Set([
  ...['current', 'strom', 'courant', 'corriente', 'corrente', 'stroom'],
  ...['value', 'reading', 'wert', 'messwert', 'valeur', 'valor', 'valore'],
]);
const NUMBERING_WORDS = new Set(['#', 'no', 'no.', 'n', 'nr', 'nr.', 'index', 'sample', 'row']);
const UNIT_WORDS = new Set(['unit', 'units', 'einheit', 'unité', 'unidad', 'unità', 'eenheid']);
const LONGEST_TITLE = 200;

const BRACKETED = /^([^([]*)[([]([^)\]]*)[)\]]$/;
const LAST_WORD = /^(.*?)[\s_.,:/-]+([^\s_.,:/-]+)$/;
const KIND_OF_CURRENT = /(?:dc|ac)$/;
/** Words alone: one letter before a name may be the name's own. */
const FIRST_WORD = /^((?:milli)?(?:amp|amps|ampere|amperes))[\s_.,:([-]([^)\]]+)[)\]]?$/i;
const CAMEL = /^(.*[a-z0-9])(Amps|MilliAmps|Milliamps|mA|A|Volts|mV|V|C|S|Ms)$/;

/**
 * What a column holds by its title: a quantity and a unit such as `front A`, `rear (mA)`, `supply V`, `t (ms)`,
 * `amps`, `amps_front`, `ambientC`. A title without a unit that names no quantity is a side in amperes. `side` is what the only
 * current is that names none.
 */
export function readTitle(title: string, side: string): Column {
  const text = title.trim().slice(0, LONGEST_TITLE);
  const { name, unit } = takeUnit(text);
  const word = name.toLowerCase();
  if (unit === 's' || unit === 'ms' || unit === 'us') return { kind: 'time', unitS: secondsTo(unit) };
  if (unit === 'V' || unit === 'mV') return { kind: 'supply', per: unit === 'V' ? 1 : 1000 };
  if (unit === 'C' || unit === 'F') return { kind: 'ambient', scale: unit };
  if (unit === 'other') return { kind: 'none' };
  if (unit !== null) return { kind: 'side', side: sideNamed(name) || side, per: unit === 'A' ? 1 : 1000 };
  if (word === '' || NUMBERING_WORDS.has(word) || UNIT_WORDS.has(word)) return { kind: 'none' };
  if (TIME_WORDS.has(word)) return { kind: 'time', unitS: 1 };
  if (SUPPLY_WORDS.has(word)) return { kind: 'supply', per: 1 };
  if (AMBIENT_WORDS.has(word)) return { kind: 'ambient', scale: 'C' };
  return { kind: 'side', side: sideNamed(name) || side, per: 1 };
}

/** Whether a title says the unit of the column's numbers. */
export function saysUnit(title: string): boolean {
  return takeUnit(title.trim().slice(0, LONGEST_TITLE)).unit !== null;
}

/** Whether a column's title says that its cells name the unit of another. */
export function isUnitTitle(title: string): boolean {
  return UNIT_WORDS.has(title.trim().toLowerCase());
}

/** The unit that a cell names, in the words of a title, also with the kind of current behind it: `A`, `mA DC`; null: none. */
export function unitOfCell(cell: string): string | null {
  const word = cell.trim().slice(0, LONGEST_TITLE).toLowerCase().replace(KIND_OF_CURRENT, '').trimEnd();
  return unitNamed(word);
}

function takeUnit(text: string): { name: string; unit: Unit | 'other' | null } {
  const whole = unitNamed(text);
  if (whole !== null && !TIME_WORDS.has(text)) return { name: '', unit: whole };
  for (const form of [BRACKETED, LAST_WORD, CAMEL]) {
    const [, named = '', word] = form.exec(text) ?? [];
    if (word === undefined) continue;
    const name = named.trim();
    const unit = unitNamed(word) ?? (isFahrenheit(name, word) ? 'F' : null);
    if (unit !== null) return { name, unit };
    // In brackets alone: behind a blank it may be the end of a side's name.
    if (form === BRACKETED && isOtherUnit(word)) return { name, unit: 'other' };
  }
  const [, first, named] = FIRST_WORD.exec(text) ?? [];
  const unit = first === undefined ? null : unitNamed(first);
  return unit === null ? { name: text, unit: null } : { name: named.trim(), unit };
}

function isFahrenheit(name: string, word: string): boolean {
  return word.trim().toLowerCase() === FAHRENHEIT && AMBIENT_WORDS.has(name.toLowerCase());
}

/** `front current` is the side front; `current` or `value` alone names none. */
function sideNamed(name: string): string {
  if (CURRENT_WORDS.has(name.toLowerCase())) return '';
  return name
    .replace(/(^|[\s_]+)current$/i, '')
    .replace(/^current(?=[\s_])[\s_]+/i, '')
    .trim();
}

function secondsTo(unit: 's' | 'ms' | 'us'): number {
  return unit === 's' ? 1 : unit === 'ms' ? 1e-3 : 1e-6;
}
