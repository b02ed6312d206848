import type * as NodeApi from "@duckdb/node-api";
import { DataType, RecordBatchReader, type RecordBatch, type Vector } from "apache-arrow";

type Duck = typeof NodeApi;

/** How a column of a stream is called in SQL, and what its cells become on the way. */
function incomingType(duck: Duck, type: DataType): { sql: string; of: NodeApi.DuckDBType; cell: (cell: never) => NodeApi.DuckDBValue } {
  if (DataType.isDictionary(type)) return incomingType(duck, type.dictionary as DataType);
  if (DataType.isUtf8(type)) return { sql: "varchar", of: duck.VARCHAR, cell: (cell: string) => cell };
  if (DataType.isBool(type)) return { sql: "boolean", of: duck.BOOLEAN, cell: (cell: boolean) => cell };
  if (DataType.isFloat(type)) return { sql: "double", of: duck.DOUBLE, cell: (cell: number) => cell };
  if (DataType.isInt(type) && type.bitWidth === 64) return { sql: "bigint", of: duck.BIGINT, cell: (cell: bigint) => cell };
  if (DataType.isInt(type)) return { sql: "integer", of: duck.INTEGER, cell: (cell: number) => cell };
  // A day arrives as milliseconds.
  if (DataType.isDate(type)) return { sql: "date", of: duck.DATE, cell: (cell: number) => new duck.DuckDBDateValue(Math.round(cell / 86_400_000)) };
  throw new RangeError(`load: needs text, DATE, boolean, integer or double columns, got ${type}`);
}

type Incoming = ReturnType<typeof incomingType>;

/** Texts of a dictionary are read once, not once a row. */
function reading(vector: Vector): (row: number) => unknown {
  if (!DataType.isDictionary(vector.type) || vector.data.length !== 1) return (row) => vector.get(row);
  const [data] = vector.data, known: unknown[] = [...(data?.dictionary ?? [])], indices = data?.values as Int32Array;
  return (row) => (vector.isValid(row) ? known[indices[row] ?? 0] : null);
}

function appended(duck: Duck, appender: NodeApi.DuckDBAppender, batch: RecordBatch, types: readonly Incoming[]): void {
  const columns = types.map((_, at) => reading(batch.getChildAt(at) as Vector));
  const most = 2048, of = types.map((type) => type.of);
  for (let from = 0; from < batch.numRows; from += most) {
    const n = Math.min(most, batch.numRows - from), chunk = duck.DuckDBDataChunk.create(of, n);
    types.forEach(({ cell }, at) => {
      const column = columns[at] as (row: number) => unknown, vector = chunk.getColumnVector(at);
      for (let i = 0; i < n; i += 1) {
        const value = column(from + i);
        vector.setItem(i, (value === null || value === undefined ? null : cell(value as never)) as never);
      }
      vector.flush();
    });
    appender.appendDataChunk(chunk);
  }
}

/**
 * Makes a temporary table from an Arrow IPC stream, a piece of 2,048 rows at a time.
 *
 * @param stream whole and closed: `frame` has been asked
 */
export async function incomingTable(duck: Duck, connection: NodeApi.DuckDBConnection, name: string, stream: Uint8Array): Promise<void> {
  const reader = RecordBatchReader.from(stream).open(), { fields } = reader.schema, types = fields.map(({ type }) => incomingType(duck, type as DataType));
  const columns = fields.map((field, at) => `"${field.name.replaceAll('"', '""')}" ${types[at]?.sql}`);
  await connection.run(`create or replace temp table ${name} (${columns.join(", ")})`);
  const appender = await connection.createAppender(name, "main", "temp");
  try {
    for (const batch of reader) appended(duck, appender, batch, types);
  } finally {
    appender.closeSync();
  }
}
