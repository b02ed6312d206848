import { columnsOf, rowsOf } from "./arrow-columns.ts";
import { frame, joined } from "./arrow-stream.ts";
import type { Connection } from "./connection.ts";
import type { Row, SqlValue } from "./engine.ts";
import { DamagedRows, EngineFull, EngineGone, QueryFailed } from "./errors.ts";
import { bound, statement, type Statement } from "./statement.ts";

/** Where a stream waits until it has been counted. */
const INCOMING = "incoming_rows";

/** What the engine says is wrong; it speaks JSON, and of a text it cannot read JSON within JSON. */
function reason(error: unknown): string {
  let text = error instanceof Error ? error.message : String(error);
  for (let depth = 0; depth < 2 && text.startsWith("{"); depth += 1) {
    try {
      text = String(JSON.parse(text).exception_message);
    } catch (broken) {
      if (!(broken instanceof SyntaxError)) throw broken;
      return text;
    }
  }
  return text;
}

/** Without this a lack of memory would pass for rows that are damaged, and the owner be told to take them out. */
const isFull = (error: unknown): boolean => /out of memory|failed to allocate|could not allocate/i.test(reason(error));

/** What can be asked of one connection, without turns and without a transaction of its own. */
export class Queries {
  constructor(private readonly connection: Connection) {}

  async rows<R extends object>(sql: string, values: Row = {}, signal?: AbortSignal): Promise<R[]> {
    return rowsOf<R>(await this.columns(sql, values, signal));
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
    const own = columns.filter((name) => !constants.some(({ column }) => column === name)).map((name) => `"${name.replaceAll('"', '""')}"`);
    const added = constants.map(({ name, column }) => `getvariable('${name}') as ${column}`);
    await this.connection.text(`insert into ${table} by name select ${[...own, ...added].join(", ")} from ${INCOMING}; drop table ${INCOMING}`);
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

interface Constant { name: string; type: string; value: SqlValue; column: string }

/** Variables for the columns that every row of a load has alike. */
function sameInEveryRow(same: Row): Constant[] {
  return Object.entries(same).map(([column, value]) => {
    if (!/^[a-z_]+$/.test(column)) throw new RangeError(`load: needs names of columns, got ${column}`);
    const type = typeof value === "string" ? "varchar" : typeof value === "boolean" ? "boolean" : "double";
    return { name: `same_${column}`, type, value, column };
  });
}
