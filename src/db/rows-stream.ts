import { Bool, type DataType, DateDay, Dictionary, Float64, Int32, Table, tableToIPC, Utf8, vectorFromArray } from "apache-arrow";
import type { SqlValue } from "./engine.ts";

/** SQL types a column of a stream can have. */
export type StreamType = "varchar" | "date" | "integer" | "double" | "boolean";

const ARROW: Readonly<Record<StreamType, () => DataType>> = {
  // Words repeat: as a dictionary they take a tenth of the room.
  varchar: () => new Dictionary(new Utf8(), new Int32()),
  date: () => new DateDay(),
  integer: () => new Int32(),
  double: () => new Float64(),
  boolean: () => new Bool(),
};

function milliseconds(day: SqlValue): number | null {
  if (day === null) return null;
  const at = typeof day === "string" ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(at)) throw new RangeError(`rowsStream: needs a day as YYYY-MM-DD, got ${String(day)}`);
  return at;
}

/**
 * Rows as an Arrow IPC stream, as `Engine.load` and the ledger take it. A property that is missing is null.
 *
 * @param types name and SQL type of every column; what a row holds beside them is left out
 * @throws {RangeError} if a day is not `YYYY-MM-DD`
 */
export function rowsStream(
  types: Readonly<Record<string, StreamType>>, rows: readonly Readonly<Record<string, SqlValue | undefined>>[],
): Uint8Array {
  const vectors = Object.entries(types).map(([name, type]) => {
    const cells = rows.map((row) => row[name] ?? null);
    return [name, vectorFromArray(type === "date" ? cells.map(milliseconds) : cells, ARROW[type]())] as const;
  });
  return tableToIPC(new Table(Object.fromEntries(vectors)), "stream");
}
