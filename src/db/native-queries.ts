import type * as NodeApi from "@duckdb/node-api";
import { rowsOf } from "./arrow-columns.ts";
import { frame } from "./arrow-stream.ts";
import type { Row, SqlValue } from "./engine.ts";
import type { Asking, Line } from "./engine-in-turns.ts";
import { isFull, reason } from "./engine-reason.ts";
import { DamagedRows, EngineFull, EngineGone, QueryFailed } from "./errors.ts";
import { nativeColumns, nativeStream } from "./native-columns.ts";
import { incomingTable } from "./native-incoming.ts";
import { insertedBy, sameInEveryRow } from "./same-columns.ts";
import { bound, statement, type Statement } from "./statement.ts";

/** Where a stream waits until it has been counted. */
const INCOMING = "incoming_rows";

/** What can be asked of one connection to native DuckDB, and the connection itself. */
export class NativeQueries implements Asking, Line {
  readonly #setters = new Map<string, NodeApi.DuckDBPreparedStatement>();
  #gone: EngineGone | null = null;

  constructor(
    private readonly duck: typeof NodeApi, private readonly instance: NodeApi.DuckDBInstance, private readonly connection: NodeApi.DuckDBConnection,
  ) {}

  async rows<R extends object>(sql: string, values: Row = {}, signal?: AbortSignal): Promise<R[]> {
    return rowsOf<R>(await this.columns(sql, values, signal));
  }

  columns(sql: string, values: Row = {}, signal?: AbortSignal): Promise<Record<string, SqlValue[]>> {
    return this.#answer(sql, values, nativeColumns, signal);
  }

  async stream(sql: string, values: Row = {}): Promise<{ stream: Uint8Array; rows: number }> {
    const stream = await this.#answer(sql, values, nativeStream);
    return { stream, rows: frame(stream).rows };
  }

  async run(scripts: readonly string[], values: Row = {}, signal?: AbortSignal): Promise<void> {
    const statements = scripts.map(statement);
    await this.#set(bound(statements, values));
    for (const script of statements) await this.#ask(script, async () => undefined, signal);
  }

  async load(table: string, stream: Uint8Array, rows: number, same: Row = {}): Promise<void> {
    if (!/^[a-z_]+(\.[a-z_]+)?$/.test(table)) throw new RangeError(`load: needs the name of a table, got ${table}`);
    const held = frame(stream);
    if (held.rows !== rows) throw new DamagedRows(`${rows} rows were stored for ${table}, ${held.rows} came back.`);
    const constants = sameInEveryRow(same);
    if (rows === 0) return;
    try {
      this.#check();
      await incomingTable(this.duck, this.connection, INCOMING, stream);
      await this.#set(constants);
      await this.text(insertedBy(table, INCOMING, held.columns, constants));
    } catch (cause) {
      if (cause instanceof EngineGone) throw cause;
      if (isFull(cause)) throw new EngineFull({ cause });
      throw new DamagedRows(`The stored rows do not fit ${table}: ${reason(cause)}`, { cause });
    }
  }

  async text(sql: string): Promise<void> {
    this.#check();
    await this.connection.run(sql);
  }

  async mend(): Promise<void> {
    // A native connection outlives a failed load.
  }

  end(why: string): void {
    if (this.#gone) return;
    this.#gone = new EngineGone(why);
    this.connection.closeSync();
    this.instance.closeSync();
  }

  #check(): void {
    if (this.#gone) throw this.#gone;
  }

  async #set(variables: readonly { name: string; type: string; value: SqlValue }[]): Promise<void> {
    for (const { name, type, value } of variables) {
      this.#check();
      const key = `${name} ${type}`, setter = this.#setters.get(key) ?? await this.connection.prepare(`set variable ${name} = ?::${type}`);
      this.#setters.set(key, setter);
      if (value === null) setter.bindNull(1);
      else if (typeof value === "string") setter.bindVarchar(1, value);
      else if (typeof value === "boolean") setter.bindBoolean(1, value);
      else setter.bindDouble(1, value);
      await setter.run();
    }
  }

  async #answer<T>(sql: string, values: Row, read: (result: NodeApi.DuckDBResult) => Promise<T>, signal?: AbortSignal): Promise<T> {
    const asked = statement(sql);
    await this.#set(bound([asked], values));
    return this.#ask(asked, read, signal);
  }

  async #ask<T>({ sql, sentence }: Statement, read: (result: NodeApi.DuckDBResult) => Promise<T>, signal?: AbortSignal): Promise<T> {
    this.#check();
    signal?.throwIfAborted();
    const stop = () => this.connection.interrupt();
    signal?.addEventListener("abort", stop, { once: true });
    try {
      const answer = await read(await this.connection.run(sql));
      signal?.throwIfAborted();
      return answer;
    } catch (cause) {
      if (signal?.aborted) throw signal.reason;
      if (cause instanceof RangeError || cause instanceof EngineGone) throw cause;
      if (isFull(cause)) throw new EngineFull({ cause });
      throw new QueryFailed(sentence, reason(cause), sql, { cause });
    } finally {
      signal?.removeEventListener("abort", stop);
    }
  }
}
