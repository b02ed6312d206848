import type { TableName } from "../columns.ts";

/** The statement for the new rows of one table, as they are kept. Only names of ours stand in it, and all seven are alike. */
export function newRows(table: TableName): string {
  return `-- New rows of ${table}, in the order of their files.
select w.* exclude (file_no)
from staging.${table} w
anti join staging.${table}_fate f using (file_no, source_line)
order by w.file_no, w.source_line`;
}
