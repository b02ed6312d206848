import type { OwnReading } from "../notes/own-readings.ts";

/** In which order day, month and year stand. */
export type DateOrder = "day first" | "month first" | "year first";

/** A reel fished in several waters counts as fished in the saltiest of them, or its water stays unknown. */
export type MixedWater = "saltiest" | "left empty";

/** A seal is changed at every service, worn or not, or only when it needs it. */
export type RoutineChange = "as routine" | "when worn";

/** What a sheet is: jobs (one row a reel), a till's sales, a stock list, one of our own tables as RECORDS has them. */
export type SheetKind = "jobs" | "till" | "stock" | "table" | "left out";

export interface ColumnAnswer {
  /** The column's label, see `ColumnUnderstanding`. */
  readonly column: string;
  /** A key of `meaningsFor(kind)`; null leaves the column out. */
  readonly means: string | null;
}

/** What is settled for one sheet. Anything left null is taken from the file where the file settles it. */
export interface SheetAnswers {
  readonly sheet: string | null;
  readonly kind: SheetKind;
  readonly columns: readonly ColumnAnswer[];
  readonly dates: DateOrder | null;
  readonly decimal: "point" | "comma" | null;
  /** Year of dates that have none. */
  readonly year: number | null;
  /** The currency amounts are in, as the file writes it; amounts in others go to the rows to fix. */
  readonly currency: string | null;
  /** What a cell that names several waters (`lake + estuary`) counts as; absent or null while nobody was asked. */
  readonly mixed_water?: MixedWater | null;
  /** What was said of seals changed at services without a word about a fault, by place; absent or null while nobody was asked. */
  readonly routine_parts?: readonly { readonly position: string; readonly changed: RoutineChange }[] | null;
  /** Our column → word of the file → our word; an empty word leaves the cell empty. */
  readonly values: readonly { readonly column: string; readonly word: string; readonly ours: string }[];
  /** Our column → the value of every row, where the file has no such column. */
  readonly constants: readonly { readonly column: string; readonly value: string }[];
}

/** All that is settled for a file; plain data, kept as JSON in the ledger's settings and usable as `mapping.json`. */
export interface Answers {
  readonly version: 1;
  readonly sheets: readonly SheetAnswers[];
  /** What the notes of the file say where that is not sure; the shop's spelling book holds such answers too. */
  readonly notes?: readonly OwnReading[];
}
