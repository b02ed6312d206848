import { columnsOf, rowsInTurns } from "./arrow-columns.ts";
import { frame, joined } from "./arrow-stream.ts";
import type { Connection } from "./connection.ts";
import type { Row, SqlValue } from "./engine.ts";
import type { Asking } from "./engine-in-turns.ts";
import { isFull, reason } from "./engine-reason.ts";
import { DamagedRows, EngineFull, EngineGone, QueryFailed } from "./errors.ts";
import { insertedBy, sameInEveryRow, type Constant } from "./same-columns.ts";
import { bound, statement, type Statement } from "./statement.ts";

/** Where a stream waits until it has been counted. */
const INCOMING = "incoming_rows";

/** What can be asked of one connection, without turns and without a transaction of its own. */
export class Queries implements Asking {
  constructor(private readonly connection: Connection) {}

  async rows<R extends object>(sql: string, values: Row = {}, signal?: AbortSignal): Promise<R[]> {
    return rowsInTurns<R>(await this.#answer(statement(sql), values, signal), signal);
  }

  async columns(sql: string, values: Row = {}, signal?: AbortSignal): Promise<Record<string, SqlValue[]>> {
    return columnsOf(await this.#answer(statement(sql), values, signal));
  }

  async stream(sql: string, values: Row = {}): Promise<{ stream: Uint8Array; rows: number }> {
    const stream = await this.#answer(statement(sql), values);
    return { stream, rows: frame(stream).rows };
  }

  async run(scripts: readonly string[], values: Row = {}, signal?: AbortSignal): Promise<void> {
    const statements = scripts.map(statement);
    const variables = bound(statements, values);
    await this.connection.set(variables);
    for (const script of statements) await this.#pieces(script, signal);
  }

  async load(table: string, stream: Uint8Array, rows: number, same: Row = {}): Promise<void> {
    if (!/^[a-z_]+(\.[a-z_]+)?$/.test(table)) throw new RangeError(`load: needs the name of a table, got ${table}`);
    const held = frame(stream);
    if (held.rows !== rows) throw new DamagedRows(`${rows} rows were stored for ${table}, ${held.rows} came back.`);
    const constants = sameInEveryRow(same);
    if (rows === 0) return;
    try {
      await this.#insert(table, stream, rows, held.columns, constants);
    } catch (cause) {
      this.connection.spoiled = true;
      if (cause instanceof EngineGone || cause instanceof DamagedRows) throw cause;
      if (isFull(cause)) throw new EngineFull({ cause });
      throw new DamagedRows(`The stored rows do not fit ${table}: ${reason(cause)}`, { cause });
    }
  }

  async #insert(table: string, stream: Uint8Array, rows: number, columns: string[], constants: Constant[]): Promise<void> {
    await this.connection.insert(INCOMING, stream);
    const { n } = columnsOf(joined(await this.connection.pieces(`select count(*) as n from ${INCOMING}`)));
    if (n?.[0] !== rows) throw new DamagedRows(`${rows} rows were stored for ${table}, the engine read ${n?.[0]}.`);
    await this.connection.set(constants);
    await this.connection.text(insertedBy(table, INCOMING, columns, constants));
  }

  async #answer(asked: Statement, values: Row, signal?: AbortSignal): Promise<Uint8Array> {
    await this.connection.set(bound([asked], values));
    return joined(await this.#pieces(asked, signal));
  }

  async #pieces({ sql, sentence }: Statement, signal?: AbortSignal): Promise<Uint8Array[]> {
    try {
      return await this.connection.pieces(sql, signal);
    } catch (cause) {
      if (cause instanceof EngineGone || signal?.aborted) throw cause;
      if (isFull(cause)) throw new EngineFull({ cause });
      throw new QueryFailed(sentence, reason(cause), sql, { cause });
    }
  }
}
