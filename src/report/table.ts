import type { SqlValue } from "../db/engine.ts";

/** One CSV of the report: its columns in order (`note` last) and a row a line; what is null stays empty. */
export interface ReportTable {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly Readonly<Record<string, SqlValue>>[];
}
