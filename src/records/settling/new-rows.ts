import type { TableName } from "../columns.ts";

/** Columns of the waiting room that no kept row has. */
const WAITING: Partial<Record<TableName, string>> = {
  tickets: "file_no, fate, other_file, other_line",
  findings: "file_no, fate, why, other_file, other_line",
};

/** The statement for the new rows of one table, as they are kept. Only names of ours stand in it, and all seven are alike. */
export function newRows(table: TableName): string {
  return `-- New rows of ${table}, in the order of their files.
select * exclude (${WAITING[table] ?? "file_no, fate"})
from staging.${table}
where fate = 'new'
order by source_file, file_no, source_line`;
}
