/**
 * The engine in a worker thread of Node. The packaged engine is written for a web worker: it listens to
 * `globalThis.onmessage` and answers through `globalThis.postMessage`.
 */
import { createRequire } from "node:module";
import { parentPort } from "node:worker_threads";

const port = parentPort;
if (port === null) throw new RangeError("engine-node.worker: needs to be started as a worker thread");

Object.assign(globalThis, {
  /** @param {unknown} message @param {readonly import("node:worker_threads").TransferListItem[]} transfer */
  postMessage: (message, transfer) => port.postMessage(message, transfer),
});
// The packaged engine prints every failed statement although it also answers with it.
Object.assign(console, { log: () => undefined });
createRequire(import.meta.url)("@duckdb/duckdb-wasm/dist/duckdb-node-eh.worker.cjs");
port.on("message", (data) => /** @type {any} */ (globalThis).onmessage({ data }));
