import { Connection, type EngineWorker } from "./connection.ts";
import type { Engine } from "./engine.ts";
import { Queries } from "./queries.ts";
import { Turns } from "./turns.ts";

/** Runs `work` in a transaction that is taken back when it rejects. */
async function whole<T>(connection: Connection, work: () => Promise<T>, signal?: AbortSignal): Promise<T> {
  await connection.text("begin transaction");
  try {
    const done = await work();
    signal?.throwIfAborted();
    await connection.text("commit");
    return done;
  } catch (error) {
    await connection.text("rollback");
    if (connection.spoiled) await connection.renew();
    throw error;
  }
}

/** What a transaction is given: turns of its own, and an end. */
function insideOf(queries: Queries): { engine: Engine; end: () => void } {
  const turns = new Turns();
  let over = false;
  const take = <T>(work: () => Promise<T>, signal?: AbortSignal): Promise<T> => turns.take(() => {
    if (over) throw new RangeError("transaction: needs its work to be awaited before it ends, got a later call");
    return work();
  }, signal);
  const engine: Engine = {
    rows: (sql, values, signal) => take(() => queries.rows(sql, values, signal), signal),
    columns: (sql, values, signal) => take(() => queries.columns(sql, values, signal), signal),
    run: (scripts, values, signal) => take(() => queries.run(scripts, values, signal), signal),
    load: (table, stream, rows, same) => take(() => queries.load(table, stream, rows, same)),
    stream: (sql, values) => take(() => queries.stream(sql, values)),
    transaction: (work) => work(engine),
    close: () => Promise.reject(new RangeError("transaction: needs to end before the engine is closed, got close")),
  };
  return { engine, end: () => (over = true) };
}

/**
 * The engine over a worker that runs DuckDB.
 *
 * @param wasm address (in Node: path) of the engine's code
 * @throws {EngineNotStarted}
 */
export async function engineOverDuckdb(worker: EngineWorker, wasm: string, patience?: number): Promise<Engine> {
  const connection = await Connection.open(worker, wasm, patience);
  const queries = new Queries(connection);
  const turns = new Turns();
  return {
    rows: (sql, values, signal) => turns.take(() => queries.rows(sql, values, signal), signal),
    columns: (sql, values, signal) => turns.take(() => queries.columns(sql, values, signal), signal),
    run: (scripts, values, signal) =>
      turns.take(() => whole(connection, () => queries.run(scripts, values, signal), signal), signal),
    load: (table, stream, rows, same) =>
      turns.take(() => whole(connection, () => queries.load(table, stream, rows, same))),
    stream: (sql, values) => turns.take(() => queries.stream(sql, values)),
    transaction: (work, signal) => turns.take(() => whole(connection, async () => {
      const inside = insideOf(queries);
      try {
        return await work(inside.engine);
      } finally {
        inside.end();
      }
    }, signal), signal),
    close: async () => connection.end("The engine is closed."),
  };
}
