import type { ColumnType, JSONColumnType } from 'kysely';

/** Column types that many tables share: as read, as inserted, as updated. */
export type Time = ColumnType<Date, Date | string, Date | string>;
export type TimeOrNull = ColumnType<Date | null, Date | string | null | undefined, Date | string | null>;
export type TimeByDefault = ColumnType<Date, Date | string | undefined, Date | string>;
export type TextOrNull = ColumnType<string | null, string | null | undefined, string | null>;
export type Json = JSONColumnType<object>;
export type JsonOrNull = ColumnType<object | null, string | null | undefined, string | null>;

/** Of a warning, the least first. */
export type Severity = 'watch' | 'service' | 'stop';
