import { AsyncDuckDB, VoidLogger } from "@duckdb/duckdb-wasm";
import type { SqlValue } from "./engine.ts";
import { EngineGone, EngineNotStarted } from "./errors.ts";

/** The thread the engine works in, of whatever kind. */
export interface EngineWorker {
  postMessage(message: unknown, transfer: Transferable[]): void;
  onMessage(listener: (data: unknown) => void): void;
  onDeath(listener: (cause: unknown) => void): void;
  terminate(): void;
}

/** Without the first three, `current_date` and the like wait for ever on an extension that cannot be had. */
const BOOT = `set autoload_known_extensions=false; set autoinstall_known_extensions=false;
  set allow_community_extensions=false; set allowed_directories=['import/','export/']; set enable_external_access=false;
  set errors_as_json=true; set memory_limit='2500MB'; set lock_configuration=true`;

/** The packaged client listens for messages alone: its other listeners only print. */
const workerFor = (worker: EngineWorker) => ({
  addEventListener: (kind: string, listener: (event: { data: unknown }) => void) => {
    if (kind === "message") worker.onMessage((data) => listener({ data }));
  },
  removeEventListener: () => undefined,
  postMessage: (message: unknown, transfer: Transferable[]) => worker.postMessage(message, transfer),
  terminate: () => worker.terminate(),
}) as unknown as Worker;

/**
 * One connection to a database in memory.
 *
 * It knows no queue: whoever calls must wait for one call before the next, or variables and results of two would mix.
 * Once the worker is gone, every call rejects with `EngineGone`, the waiting ones too.
 */
export class Connection {
  readonly #engine: AsyncDuckDB;
  readonly #waiting = new Set<(reason: EngineGone) => void>();
  readonly #setters = new Map<string, number>();
  /** A stream failed: this connection takes no other. The tables are sound; `renew` helps. */
  spoiled = false;
  #gone: EngineGone | null = null;
  #id = -1;

  private constructor(private readonly worker: EngineWorker) {
    this.#engine = new AsyncDuckDB(new VoidLogger(), workerFor(worker));
    worker.onDeath((cause) => this.end("The calculating part has stopped.", cause));
  }

  /**
   * @param wasm address (in Node: path) of the engine's code
   * @param patience seconds to wait: a blocked worker or engine gives no sign at all
   * @throws {EngineNotStarted}
   */
  static async open(worker: EngineWorker, wasm: string, patience = 60): Promise<Connection> {
    const connection = new Connection(worker);
    const timer = setTimeout(() => connection.end(`It gave no sign for ${patience} seconds.`), patience * 1000);
    try {
      await connection.#start(wasm);
      return connection;
    } catch (cause) {
      connection.end("It did not start.");
      throw new EngineNotStarted(
        "The calculating part of Saltbench did not start. Close other tabs and reload this page; your records are safe.", { cause });
    } finally {
      clearTimeout(timer);
    }
  }

  async #start(wasm: string): Promise<void> {
    await this.#call(() => this.#engine.instantiate(wasm));
    await this.#call(() => this.#engine.open({ path: ":memory:", query: { queryPollingInterval: 20 } }));
    this.#id = await this.#call(() => this.#engine.connectInternal());
    await this.text(BOOT);
  }

  /** Runs fixed statements of ours. */
  async text(sql: string): Promise<void> {
    await this.#call(() => this.#engine.runQuery(this.#id, sql));
  }

  /** The result of a text in pieces of one Arrow IPC stream; of several statements, that of the last. */
  async pieces(sql: string, signal?: AbortSignal): Promise<Uint8Array[]> {
    signal?.throwIfAborted();
    let head = await this.#call(() => this.#engine.startPendingQuery(this.#id, sql, true));
    while (head === null) {
      await this.#stopIfCancelled(signal);
      head = await this.#call(() => this.#engine.pollPendingQuery(this.#id));
    }
    const pieces = [head];
    for (;;) {
      await this.#stopIfCancelled(signal);
      const piece = await this.#call(() => this.#engine.fetchQueryResults(this.#id));
      if (piece?.length === 0) return pieces;
      if (piece !== null) pieces.push(piece);
    }
  }

  async #stopIfCancelled(signal: AbortSignal | undefined): Promise<void> {
    if (!signal?.aborted) return;
    await this.#call(() => this.#engine.cancelPendingQuery(this.#id));
    throw signal.reason;
  }

  /** Sets variables that later statements read with `getvariable`. Posted all at once, they take one round trip. */
  async set(variables: readonly { name: string; type: string; value: SqlValue }[]): Promise<void> {
    const setters = await Promise.all(variables.map(({ name, type }) => this.#setter(name, type)));
    await Promise.all(variables.map(({ value }, at) =>
      this.#call(() => this.#engine.runPrepared(this.#id, setters[at] ?? -1, [value]))));
  }

  async #setter(name: string, type: string): Promise<number> {
    const key = `${name} ${type}`;
    const setter = this.#setters.get(key)
      ?? await this.#call(() => this.#engine.createPrepared(this.#id, `set variable ${name} = ?::${type}`));
    this.#setters.set(key, setter);
    return setter;
  }

  /** Makes a table from a stream. */
  async insert(name: string, stream: Uint8Array): Promise<void> {
    // The client gives the buffer away to the worker: without the copy the caller's own bytes would be gone. All at once: the engine
    // reads words where the message put them, and of a stream in pieces the first are gone before the last has come.
    await this.#call(() => this.#engine.insertArrowFromIPCStream(this.#id, stream.slice(), { name, create: true }));
  }

  /** Goes on with a fresh connection to the same tables. What it had open is lost. */
  async renew(): Promise<void> {
    const old = this.#id;
    this.#setters.clear();
    this.spoiled = false;
    this.#id = await this.#call(() => this.#engine.connectInternal());
    await this.#call(() => this.#engine.disconnect(old));
  }

  /** Stops the worker. Whoever waits is told why. */
  end(why: string, cause?: unknown): void {
    if (this.#gone) return;
    this.#gone = new EngineGone(why, { cause });
    this.worker.terminate();
    for (const reject of this.#waiting) reject(this.#gone);
    this.#waiting.clear();
  }

  #call<T>(ask: () => Promise<T>): Promise<T> {
    if (this.#gone) return Promise.reject(this.#gone);
    return new Promise((resolve, reject) => {
      this.#waiting.add(reject);
      ask()
        .catch((error: unknown) => {
          // A trap inside the engine's code leaves its memory in an unknown state.
          if (error instanceof Error && error.name === "RuntimeError") this.end("The calculating part has broken down.", error);
          throw error;
        })
        .then(resolve, reject)
        .finally(() => this.#waiting.delete(reject));
    });
  }
}
