import type { Reject } from "../records/ledger/ledger.ts";
import type { ReportTable } from "./table.ts";

/** Every cell or row that could not be taken over, in the order of files and lines. */
export function rejectedTable(rejects: readonly Reject[]): ReportTable {
  const rows = rejects.map(({ file, line, column, value, reason }) => ({ file, line, column, value, reason, note: null }));
  return {
    file: "rejected.csv",
    columns: ["file", "line", "column", "value", "reason", "note"],
    rows: rows.sort((a, b) => (a.file === b.file ? a.line - b.line : a.file < b.file ? -1 : 1)),
  };
}
