import type { DuckDBDataChunk, DuckDBDecimalValue, DuckDBResult, DuckDBType, DuckDBValue } from "@duckdb/node-api";
import { DateDay, Float64, Int32, Int64, Table, tableToIPC, Utf8, Bool, makeData, makeVector, vectorFromArray } from "apache-arrow";
import type { Data } from "apache-arrow";
import type { SqlValue } from "./engine.ts";

/** What one cell becomes; null stays null and is not asked. */
type Convert = (cell: never) => SqlValue | SqlValue[];

const DAY_MS = 86_400_000;
const PLAIN = new Set(["VARCHAR", "BOOLEAN", "TINYINT", "SMALLINT", "INTEGER", "UTINYINT", "USMALLINT", "UINTEGER", "FLOAT", "DOUBLE"]);
const WIDE = new Set(["BIGINT", "UBIGINT", "HUGEINT", "UHUGEINT"]);

/** A type by its name without what it is made of: `DECIMAL(9,2)` is a DECIMAL. */
const nameOf = (type: DuckDBType) => (/\[\]$/.test(String(type)) ? "LIST" : /^[A-Z]+/.exec(String(type))?.[0] ?? "");

function converter(type: DuckDBType, column: string): Convert {
  const name = nameOf(type);
  if (PLAIN.has(name)) return (cell: SqlValue) => cell;
  if (WIDE.has(name)) return (cell: bigint) => Number(cell);
  if (name === "DECIMAL") return ({ value, scale }: DuckDBDecimalValue) => Number(value) / 10 ** scale;
  if (name === "DATE") return ({ days }: { days: number }) => new Date(days * DAY_MS).toISOString().slice(0, 10);
  // A column that is null throughout.
  if (name === "" || name === "SQLNULL") return () => null;
  if (name === "LIST") {
    const inner = converter((type as unknown as { valueType: DuckDBType }).valueType, column);
    return ({ items }: { items: readonly DuckDBValue[] }) => items.map((cell) => (cell === null ? null : inner(cell as never))) as SqlValue[];
  }
  throw new RangeError(`columns: needs ${column} as text, number, boolean, DATE or a list of these, got ${String(type)}; cast it in the statement`);
}

function added(to: (SqlValue | SqlValue[])[], chunk: DuckDBDataChunk, at: number, convert: Convert): void {
  const vector = chunk.getColumnVector(at);
  for (let row = 0; row < vector.itemCount; row += 1) {
    const cell = vector.getItem(row);
    to.push(cell === null ? null : convert(cell as never));
  }
}

/**
 * The columns of a native result, cell by cell what `arrow-columns.ts` makes of the same in the browser.
 *
 * @throws {RangeError} naming the column if it has a type with no plain value
 */
export async function nativeColumns(result: DuckDBResult): Promise<Record<string, SqlValue[]>> {
  const converters = result.columnTypes().map((type, at) => converter(type, result.columnName(at)));
  const columns: (SqlValue | SqlValue[])[][] = converters.map(() => []);
  for (let chunk = await result.fetchChunk(); chunk !== null && chunk.rowCount > 0; chunk = await result.fetchChunk()) {
    for (const [at, convert] of converters.entries()) added(columns[at] ?? [], chunk, at, convert);
  }
  return Object.fromEntries(columns.map((cells, at) => [result.columnName(at), cells as SqlValue[]]));
}

/** Texts one after the other, as the browser's engine gives them. */
function texts(cells: readonly SqlValue[]): Data {
  const valueOffsets = new Int32Array(cells.length + 1), nullBitmap = new Uint8Array((cells.length + 7) >> 3);
  let nullCount = 0;
  for (const [row, cell] of cells.entries()) {
    if (cell === null) nullCount += 1;
    else nullBitmap[row >> 3] = (nullBitmap[row >> 3] ?? 0) | (1 << (row & 7));
    valueOffsets[row + 1] = (valueOffsets[row] ?? 0) + (cell === null ? 0 : Buffer.byteLength(cell as string));
  }
  const data = Buffer.from(cells.map((cell) => cell ?? "").join(""));
  return makeData({ type: new Utf8(), length: cells.length, nullCount, nullBitmap, valueOffsets, data });
}

function vectorOf(cells: readonly SqlValue[], type: string) {
  if (type === "VARCHAR" || type === "" || type === "SQLNULL") return makeVector(texts(cells));
  if (type === "DATE") return vectorFromArray(cells.map((cell) => (cell === null ? null : Date.parse(`${String(cell)}T00:00:00Z`))), new DateDay());
  if (type === "BOOLEAN") return vectorFromArray(cells as (boolean | null)[], new Bool());
  if (type === "BIGINT") return vectorFromArray(cells.map((cell) => (cell === null ? null : BigInt(cell as number))), new Int64());
  if (["TINYINT", "SMALLINT", "INTEGER"].includes(type)) return vectorFromArray(cells as (number | null)[], new Int32());
  if (["FLOAT", "DOUBLE"].includes(type)) return vectorFromArray(cells as (number | null)[], new Float64());
  throw new RangeError(`stream: needs text, DATE, boolean, integer or double columns, got ${type}; cast it in the statement`);
}

/** The rows of a native result as an Arrow IPC stream. */
export async function nativeStream(result: DuckDBResult): Promise<Uint8Array> {
  const types = result.columnTypes().map(nameOf), columns = Object.entries(await nativeColumns(result));
  return tableToIPC(new Table(Object.fromEntries(columns.map(([name, cells], at) => [name, vectorOf(cells, types[at] ?? "")]))), "stream");
}
