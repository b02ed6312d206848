import { Worker, type TransferListItem } from "node:worker_threads";
import type { Engine } from "./engine.ts";
import { engineCode } from "./engine-code.ts";
import { engineOverDuckdb } from "./engine-over-duckdb.ts";

/**
 * The engine in Node, for tests and the headless report.
 *
 * It keeps the process alive until it is closed.
 *
 * @throws {EngineNotStarted}
 */
export function openNodeEngine(): Promise<Engine> {
  const worker = new Worker(new URL("./engine-node.worker.mjs", import.meta.url), { execArgv: [] });
  return engineOverDuckdb({
    postMessage: (message, transfer) => worker.postMessage(message, transfer as unknown as TransferListItem[]),
    onMessage: (listener) => void worker.on("message", listener),
    onDeath: (listener) => {
      worker.on("error", listener);
      worker.on("exit", (code) => listener(new Error(`the worker thread left with code ${code}`)));
    },
    terminate: () => void worker.terminate(),
  }, engineCode());
}
