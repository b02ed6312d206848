import { Connection, type EngineWorker } from "./connection.ts";
import type { Engine } from "./engine.ts";
import { engineInTurns } from "./engine-in-turns.ts";
import { Queries } from "./queries.ts";

/**
 * The engine over a worker that runs DuckDB.
 *
 * @param wasm address (in Node: path) of the engine's code
 * @throws {EngineNotStarted}
 */
export async function engineOverDuckdb(worker: EngineWorker, wasm: string, patience?: number): Promise<Engine> {
  const connection = await Connection.open(worker, wasm, patience);
  return engineInTurns(new Queries(connection), {
    text: (sql) => connection.text(sql),
    mend: async () => {
      if (connection.spoiled) await connection.renew();
    },
    end: (why) => connection.end(why),
  });
}
