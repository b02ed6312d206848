import type { SqlValue } from "../db/engine.ts";
import { csvText } from "../records/csv-out.ts";

/** One CSV of the report: its columns in order (`note` last) and a row a line; what is null stays empty. */
export interface ReportTable {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly Readonly<Record<string, SqlValue | undefined>>[];
}

/** @throws {RangeError} when a row lacks one of the columns */
export function tableText({ file, columns, rows }: ReportTable): string {
  return csvText(columns, rows.map((row) => columns.map((column) => {
    const value = row[column];
    if (value === undefined) throw new RangeError(`tableText: ${file} needs ${column} in every row, got ${Object.keys(row).join(", ")}`);
    return value;
  })));
}
