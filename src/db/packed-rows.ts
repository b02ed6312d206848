import { columnsOf, rowsOf } from "./arrow-columns.ts";
import type { Engine, Row } from "./engine.ts";

/** Rows, or the Arrow stream they come in: whoever only passes many of them on need not make objects of them. */
export type PackedRows<R> = readonly R[] | Uint8Array;

/** The rows of one `.sql` file as they come from the engine, for a worker to unpack. @throws the signal's reason when cancelled meanwhile, and what `stream` throws */
export async function packedRows(engine: Engine, sql: string, values?: Row, signal?: AbortSignal): Promise<Uint8Array> {
  signal?.throwIfAborted();
  const { stream } = await engine.stream(sql, values);
  signal?.throwIfAborted();
  return stream;
}

export const unpackedRows = <R>(rows: PackedRows<R>): readonly R[] => (rows instanceof Uint8Array ? rowsOf<R>(columnsOf(rows)) : rows);
