/** What SQL can be given, and what it gives back. A DATE is `YYYY-MM-DD`, a BIGINT or DECIMAL a number. */
export type SqlValue = string | number | boolean | null;
export type Row = Record<string, SqlValue>;

/**
 * The way to tell how far slow work has come: `done` of `total`, which is null while unknown. `rows`, where it is given,
 * is what the owner wants to see counted while `done` counts something else, such as bytes.
 */
export type Report = (progress: { step: string; done: number; total: number | null; rows?: number }) => void;

/**
 * The SQL engine, the same in the browser, in tests and in the headless report.
 *
 * Work is done one piece after the other. A cancelled piece rejects with the signal's reason and changes nothing.
 * After `close`, or when the engine's worker has died, every waiting piece rejects with `EngineGone`.
 */
export interface Engine {
  /**
   * Rows of one `.sql` file (one statement with a heading, see `statement.ts`). A LIST column comes as an array.
   * @throws {RangeError} when the values given are not exactly the parameters the heading names, or a column is of a type
   * with no plain value (TIMESTAMP, ENUM, STRUCT …)
   * @throws {QueryFailed} with the statement's name, its SQL and the engine's message as `cause`
   */
  rows<R extends object>(sql: string, values?: Row, signal?: AbortSignal): Promise<R[]>;
  /** The same, column by column (faster for charts and for many rows). */
  columns(sql: string, values?: Row, signal?: AbortSignal): Promise<Record<string, SqlValue[]>>;
  /** Runs fixed scripts of ours (may hold several statements), all inside one transaction. */
  run(scripts: readonly string[], values?: Row, signal?: AbortSignal): Promise<void>;
  /**
   * Adds rows from an Arrow IPC stream to a table that exists; columns match by name, those not in the stream are null.
   * @param same columns that are alike in every row; they win over what the stream holds
   * @throws {DamagedRows} when the stream does not hold exactly `rows` rows, or not of this table's columns
   */
  load(table: string, stream: Uint8Array, rows: number, same?: Row): Promise<void>;
  /** The rows of a statement as an Arrow IPC stream with their number. */
  stream(sql: string, values?: Row): Promise<{ stream: Uint8Array; rows: number }>;
  /**
   * Does several pieces as one: others wait, and when `work` rejects or is cancelled nothing of it has happened.
   * `work` must ask the engine it is given; the outer one would wait for the transaction to end.
   */
  transaction<T>(work: (inside: Engine) => Promise<T>, signal?: AbortSignal): Promise<T>;
  close(): Promise<void>;
}
