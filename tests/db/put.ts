import type { Engine, Row } from "../../src/db/engine.ts";
import { derive } from "../../src/db/prepare.ts";
import { rowsStream, type StreamType } from "../../src/db/rows-stream.ts";

const COLUMNS = "-- Columns of a table.\n-- Parameters: name varchar\nselect column_name as name, lower(data_type) as type from information_schema.columns where table_schema || '.' || table_name = getvariable('name') order by ordinal_position";

/** Adds rows to a table; a column that is not given is empty. `source_line` counts up where it is missing. */
export async function put(engine: Engine, table: string, rows: readonly Row[]): Promise<void> {
  const columns = await engine.rows<{ name: string; type: StreamType }>(COLUMNS, { name: table.includes(".") ? table : `main.${table}` });
  const types = Object.fromEntries(columns.map(({ name, type }) => [name, type]));
  const unknown = rows.flatMap(Object.keys).find((name) => !(name in types));
  if (unknown !== undefined) throw new RangeError(`put: ${table} needs one of its columns, got ${unknown}`);
  await engine.load(table, rowsStream(types, rows.map((row, at) => ({ source_line: at + 2, ...row }))), rows.length);
}

/** Puts what is given into the tables and derives. */
export async function putAll(engine: Engine, tables: Record<string, readonly Row[]>, failure_grade = 3): Promise<void> {
  for (const [table, rows] of Object.entries(tables)) await put(engine, table, rows);
  await derive(engine, { failure_grade });
}
