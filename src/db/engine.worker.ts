// In this order: what the engine may not do has to be gone before its own code looks for it.
import "./refuse-requests.ts";
import "./early-code.ts";
import "@duckdb/duckdb-wasm/dist/duckdb-browser-eh.worker.js";
