import type { Engine } from "./engine.ts";
import { EngineGone } from "./errors.ts";

/** The same engine; `gone` is told, besides the caller, whenever a piece of work finds it dead. */
export function watchedEngine(engine: Engine, gone: (error: EngineGone) => void): Engine {
  const told = async <T>(work: Promise<T>): Promise<T> => {
    try {
      return await work;
    } catch (error) {
      if (error instanceof EngineGone) gone(error);
      throw error;
    }
  };
  return {
    rows: (sql, values, signal) => told(engine.rows(sql, values, signal)),
    columns: (sql, values, signal) => told(engine.columns(sql, values, signal)),
    run: (scripts, values, signal) => told(engine.run(scripts, values, signal)),
    load: (table, stream, rows, same) => told(engine.load(table, stream, rows, same)),
    stream: (sql, values) => told(engine.stream(sql, values)),
    transaction: (work, signal) => told(engine.transaction(work, signal)),
    close: () => engine.close(),
  };
}
