import { TABLES, table } from "../columns.ts";
import type { Table, TableName } from "../columns.ts";

/** A guess is left out: it is made again when the rows come in. */
const cell = (name: string) => (name === "came_in" ? "case when came_in_guessed then null else came_in end as came_in" : name);

/** Of a catalogue the newest row of each key, under the names it came with. */
function newest({ name, key, same_key }: Table): string {
  if (same_key !== "newest") return "";
  const keys = name === "orders" ? [...key, "coalesce(line_no, 1)"] : key;
  return `qualify row_number() over (partition by ${keys.join(", ")} order by import_no desc, source_file desc, source_line desc) = 1\n`;
}

/** Rows of one ticket number stand from the oldest to the newest, because the newest counts. */
const order = (name: TableName, columns: readonly string[]) =>
  (name === "tickets" ? ["ticket_no", "import_no", "coalesce(came_as, 0)", "source_file", "source_line"] : [...columns, ...(name === "findings" ? ["of_version"] : [])]).join(", ");

/** The statement for all rows of one table in an order that their content gives. Only names of ours stand in it. */
export function keptRows(name: TableName): { sql: string; columns: string[] } {
  const columns = table(name).columns.map((column) => column.name);
  const sql = `-- All rows of ${name}, for the backup.
select ${columns.map(cell).join(", ")}, source_file, source_line, ${name === "findings" ? "of_version" : "null::varchar as of_version"}, row_key
from ledger.${name}
${newest(table(name))}order by ${order(name, columns)}`;
  return { sql, columns };
}

/** The tables in the order of their files. */
export const TABLE_FILES = TABLES.map(({ name }) => ({ table: name, name: `${name}.csv` }));
