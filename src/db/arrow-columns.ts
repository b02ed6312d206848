import { DataType, tableFromIPC, type Table, type Vector } from "apache-arrow";
import type { SqlValue } from "./engine.ts";

/** What one cell becomes; null stays null and is not asked. */
type Convert = (cell: never) => SqlValue | SqlValue[];

const day = (milliseconds: number) => new Date(milliseconds).toISOString().slice(0, 10);

/** An integer of `words.length × 32` bits in two's complement, lowest word first, as a number. */
function wide(words: Uint32Array): number {
  let value = 0n;
  for (let at = words.length - 1; at >= 0; at -= 1) value = (value << 32n) | BigInt(words[at] ?? 0);
  return Number(BigInt.asIntN(words.length * 32, value));
}

/**
 * The engine's own casts of BIGINT and DECIMAL to double leave what is inside a list uncast and unreadable, so both are
 * converted here. An ENUM arrives without its words and a TIMESTAMP would lose its hour: both are refused.
 */
function converter(type: DataType, column: string): Convert {
  if (DataType.isUtf8(type) || DataType.isLargeUtf8(type) || DataType.isBool(type) || DataType.isFloat(type)) return (cell: SqlValue) => cell;
  if (DataType.isInt(type)) return type.bitWidth === 64 ? (cell: bigint) => Number(cell) : (cell: number) => cell;
  if (DataType.isDecimal(type)) {
    const unit = 10 ** type.scale;
    return (cell: Uint32Array) => wide(cell) / unit;
  }
  if (DataType.isDate(type)) return day;
  if (DataType.isNull(type)) return () => null;
  if (DataType.isList(type)) {
    const inner = converter(type.children[0]?.type as DataType, column);
    return (cell: Vector) => cells(cell, inner) as SqlValue[];
  }
  throw new RangeError(`columns: needs ${column} as text, number, boolean, DATE or a list of these, got ${type}; cast it in the statement`);
}

/** Numbers that need no converting and lack nothing; null for other columns. */
function plainNumbers(vector: Vector): number[] | null {
  const { type } = vector, plain = DataType.isFloat(type) ? type.precision === 2 : DataType.isInt(type) && type.bitWidth === 32;
  return plain && vector.nullCount === 0 ? Array.from(vector.toArray() as Iterable<number>) : null;
}

function cells(vector: Vector, convert: Convert): (SqlValue | SqlValue[])[] {
  const numbers = plainNumbers(vector);
  if (numbers) return numbers;
  return Array.from({ length: vector.length }, (_, at) => {
    const cell: unknown = vector.get(at);
    return cell === null || cell === undefined ? null : convert(cell as never);
  });
}

/**
 * The columns of a result: DATE as `YYYY-MM-DD`, every number as a number, a list as an array, nothing as null.
 *
 * @param stream Arrow IPC as the engine gives it
 * @throws {RangeError} naming the column if it has a type with no plain value
 */
export const columnsOf = (stream: Uint8Array): Record<string, SqlValue[]> => columnsIn(tableFromIPC(stream));

function columnsIn(table: Table): Record<string, SqlValue[]> {
  return Object.fromEntries(table.schema.fields.map((field, at) => {
    const vector = table.getChildAt(at);
    return [field.name, vector ? (cells(vector, converter(field.type, field.name)) as SqlValue[]) : []];
  }));
}

/** The same, row by row. */
export function rowsOf<R>(columns: Record<string, SqlValue[]>): R[] {
  const names = Object.keys(columns);
  const length = columns[names[0] ?? ""]?.length ?? 0, given = names.map((name) => columns[name] ?? []);
  // A loop takes a third of the time that entries take: there may be tens of thousands of rows.
  return Array.from({ length }, (_, at) => {
    const row: Record<string, SqlValue> = {};
    for (let i = 0; i < names.length; i += 1) row[names[i] as string] = given[i]?.[at] ?? null;
    return row as R;
  });
}

/** Rows made at a time, and how long that goes on before others have their turn. */
const AT_ONCE = 1_000, TURN_MS = 12;

/** A turn for others that, unlike a timer, is not put off while the window is hidden. */
const turn = () => new Promise<void>((done) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    done();
  };
  port2.postMessage(null);
});

/**
 * The rows of a stream, with turns for others in between: whoever asks may be the thread that a screen is drawn on, and of a large shop
 * tens of thousands of rows may come at once.
 *
 * @throws the signal's reason when called off meanwhile, and what `columnsOf` throws
 */
export async function rowsInTurns<R>(stream: Uint8Array, signal?: AbortSignal): Promise<R[]> {
  const table = tableFromIPC(stream), rows: R[] = [];
  let began = performance.now(), from = 0;
  do {
    if (performance.now() - began > TURN_MS) {
      await turn();
      signal?.throwIfAborted();
      began = performance.now();
    }
    for (const row of rowsOf<R>(columnsIn(table.numRows <= AT_ONCE ? table : table.slice(from, from + AT_ONCE)))) rows.push(row);
    from += AT_ONCE;
  } while (from < table.numRows);
  return rows;
}
