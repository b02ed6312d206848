import wasm from "@duckdb/duckdb-wasm/dist/duckdb-eh.wasm?url";
import type { Engine } from "./engine.ts";
import { engineOverDuckdb } from "./engine-over-duckdb.ts";
import { engineThread } from "./engine-thread.ts";

/**
 * The engine in the browser, in a worker of its own.
 *
 * @throws {EngineNotStarted}
 */
export function openBrowserEngine(): Promise<Engine> {
  const worker = engineThread();
  return engineOverDuckdb({
    postMessage: (message, transfer) => worker.postMessage(message, transfer),
    onMessage: (listener) => worker.addEventListener("message", (event) => listener(event.data)),
    onDeath: (listener) => worker.addEventListener("error", (event) => {
      event.preventDefault();
      listener(event.error ?? new Error(event.message === "" ? "the worker's script could not be loaded" : event.message));
    }),
    terminate: () => worker.terminate(),
  }, new URL(wasm, document.baseURI).href);
}
