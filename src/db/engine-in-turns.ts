import type { Engine } from "./engine.ts";
import { Turns } from "./turns.ts";

/** What can be asked of one connection to a database, one piece at a time and without a transaction of its own. */
export type Asking = Pick<Engine, "rows" | "columns" | "run" | "load" | "stream">;

/** The connection itself, as far as turns and transactions need it. */
export interface Line {
  /** Runs fixed statements of ours. */
  text(sql: string): Promise<void>;
  /** Puts right what a failed piece has left behind, after its transaction was taken back. */
  mend(): Promise<void>;
  end(why: string): void;
}

/** Runs `work` in a transaction that is taken back when it rejects. */
async function whole<T>(line: Line, work: () => Promise<T>, signal?: AbortSignal): Promise<T> {
  await line.text("begin transaction");
  try {
    const done = await work();
    signal?.throwIfAborted();
    await line.text("commit");
    return done;
  } catch (error) {
    await line.text("rollback");
    await line.mend();
    throw error;
  }
}

/** What a transaction is given: turns of its own, and an end. */
function insideOf(queries: Asking): { engine: Engine; end: () => void } {
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

/** An engine over one connection: pieces of work in turns, what writes in a transaction. */
export function engineInTurns(queries: Asking, line: Line): Engine {
  const turns = new Turns();
  return {
    rows: (sql, values, signal) => turns.take(() => queries.rows(sql, values, signal), signal),
    columns: (sql, values, signal) => turns.take(() => queries.columns(sql, values, signal), signal),
    run: (scripts, values, signal) =>
      turns.take(() => whole(line, () => queries.run(scripts, values, signal), signal), signal),
    load: (table, stream, rows, same) =>
      turns.take(() => whole(line, () => queries.load(table, stream, rows, same))),
    stream: (sql, values) => turns.take(() => queries.stream(sql, values)),
    transaction: (work, signal) => turns.take(() => whole(line, async () => {
      const inside = insideOf(queries);
      try {
        return await work(inside.engine);
      } finally {
        inside.end();
      }
    }, signal), signal),
    close: async () => line.end("The engine is closed."),
  };
}
