import { TABLES } from "../columns.ts";
import type { TableName } from "../columns.ts";

/** Where the rows that count stand: of a catalogue the newest of each key. */
const FROM: Record<TableName, string> = {
  tickets: "ledger.tickets", findings: "ledger.findings",
  models: "models", parts: "parts", fits: "fits", suppliers: "suppliers", orders: "orders",
};

/** A guess is left out: it is made again when the rows come in. */
const cell = (name: string) => (name === "came_in" ? "case when came_in_guessed then null else came_in end as came_in" : name);

/** The statement for all rows of one table in an order that their content gives. Only names of ours stand in it. */
export function keptRows(name: TableName): { sql: string; columns: string[] } {
  const columns = TABLES.find((one) => one.name === name)?.columns.map((column) => column.name) ?? [];
  const sql = `-- All rows of ${name}, for the backup.
select ${columns.map(cell).join(", ")}
from ${FROM[name]}
order by ${columns.join(", ")}`;
  return { sql, columns };
}
