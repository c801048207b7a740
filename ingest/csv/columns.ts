import { readNumberCell, readQuantityCell } from './cells.ts';
import { type Column, isUnitTitle, readTitle, saysUnit, unitOfCell } from './header.ts';

/** Whose a current is by its title, or where that does not say it. */
export interface SideNaming {
  /** That of a current whose title names none. */
  readonly side: string;
  /** The room's only side: what the only current is, whatever its title says; null: the room has several, or is not known. */
  readonly onlySide: string | null;
  /** Those of the room, which a title means however it writes them; none where the room is not known. */
  readonly roomSides: readonly string[];
}

/** A column whose cells name the unit of the numbers beside it. */
export interface UnitColumn {
  /** Its place, from 0. */
  readonly at: number;
  /** As its first cell names it; null where that is empty. */
  readonly unit: string | null;
}

export interface TitledColumns {
  readonly columns: readonly Column[];
  readonly units: readonly UnitColumn[];
}

/** What each column holds by its title, and by what stands below it where that names a unit. */
export function readColumns(
  titles: readonly string[],
  firstRow: readonly string[] | null,
  naming: SideNaming,
): TitledColumns {
  const units = unitColumns(titles, firstRow);
  const columns = titles.map((title, i): Column => {
    if (units.some(({ at }) => at === i)) return { kind: 'none' };
    const unit = units.find(({ at }) => at === i + 1)?.unit ?? null;
    return readTitle(unit === null || saysUnit(title) ? title : `${title} (${unit})`, naming.side);
  });
  const currents = withoutTexts(columns, titles, firstRow ?? [], naming);
  return { columns: withOnlySide(currents, naming.onlySide).map((one) => asRoomCallsIt(one, naming)), units };
}

/** A meter's own words (`DC`, `AUTO`) are no current, where another column is one and their title is no side of the room. */
function withoutTexts(
  columns: readonly Column[],
  titles: readonly string[],
  cells: readonly string[],
  naming: SideNaming,
): readonly Column[] {
  const isText = (column: Column, at: number) => {
    if (column.kind !== 'side' || saysUnit(titles[at])) return false;
    const cell = cells[at] ?? '';
    return readNumberCell(cell) === null && readQuantityCell(cell) === null;
  };
  const isOfRoom = (column: Column) => {
    const called = asRoomCallsIt(column, naming);
    return called.kind === 'side' && naming.roomSides.includes(called.side);
  };
  if (columns.every((column, at) => column.kind !== 'side' || isText(column, at))) return columns;
  return columns.map((column, at) =>
    isText(column, at) && !isOfRoom(column) ? { kind: 'none', holdsText: true } : column,
  );
}

function unitColumns(titles: readonly string[], firstRow: readonly string[] | null): UnitColumn[] {
  const cells = firstRow ?? [];
  // A second row of titles names units and nothing else.
  const isOfNumbers = cells.some((cell) => Number.isFinite(readNumberCell(cell)));
  return titles.flatMap((title, at) => {
    const unit = isOfNumbers && at > 0 ? unitOfCell(cells[at] ?? '') : null;
    return unit !== null || isUnitTitle(title) ? [{ at, unit }] : [];
  });
}

/** A file with one current, of a room with one side, can hold no other's: a meter calls it as it likes. */
function withOnlySide(columns: readonly Column[], onlySide: string | null): readonly Column[] {
  if (onlySide === null || columns.filter(({ kind }) => kind === 'side').length !== 1) return columns;
  return columns.map((column) => (column.kind === 'side' ? { ...column, side: onlySide } : column));
}

/** A side of the room under the room's own name, where the title writes it with other letters or other blanks. */
function asRoomCallsIt(column: Column, { roomSides }: SideNaming): Column {
  if (column.kind !== 'side' || roomSides.includes(column.side)) return column;
  const meant = roomSides.filter((side) => plain(side) === plain(column.side));
  return meant.length === 1 ? { ...column, side: meant[0] } : column;
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .split(/[\s_.,-]+/)
    .filter((word) => word !== '')
    .join(' ');
}
