import type { TableName } from "../columns.ts";

/** A row of a flat sheet makes several tickets and findings, each with its own end. */
const sameRow = (table: TableName) => (table === "tickets" || table === "findings" ? "file_no, source_line, row_key" : "file_no, source_line");

/** The statement for the new rows of one table, as they are kept. Only names of ours stand in it, and all seven are alike. */
export function newRows(table: TableName): string {
  return `-- New rows of ${table}, in the order of their files.
select w.* exclude (file_no)
from staging.${table} w
anti join staging.${table}_fate f using (${sameRow(table)})
order by w.file_no, w.source_line, w.row_key`;
}

/** The same where a backup says which file and line each row came from. */
export function newRowsFromBackup(table: TableName): string {
  const version = table === "findings" ? ", coalesce(s.of_version, w.of_version) as of_version" : table === "tickets" ? ", w.source_line as came_as" : "";
  return `-- New rows of ${table}, in the order of their files, with where they came from before the backup.
select w.* exclude (file_no) replace (coalesce(s.from_file, w.source_file) as source_file, coalesce(s.from_line, w.source_line) as source_line, coalesce(s.from_key, w.row_key) as row_key${version})
from staging.${table} w
anti join staging.${table}_fate f using (${sameRow(table)})
left join staging.sources s on s.file_no = w.file_no and s.source_line = w.source_line
order by w.file_no, w.source_line, w.row_key`;
}
