import type { TableName } from "../columns.ts";

/** Newest shape of what is stored; a ledger with a higher number is refused, never rewritten. */
export const LEDGER_VERSION = 1;

/** A cell (or row) that could not be taken over as it stands. `line` counts from 1 with the heading, `column` is as in the file. */
export interface Reject {
  readonly file: string;
  readonly line: number;
  readonly column: string;
  readonly value: string;
  readonly reason: string;
  /** The row's own cells, so that it can be put right without its file; absent where only some are kept. */
  readonly row?: RowCells;
}

/** A row as its file has it. */
export interface RowCells {
  readonly headings: readonly string[];
  readonly cells: readonly string[];
}

/** What became of one file: `rows_read = rows_new + rows_known + rows_to_fix + rows_dropped`. */
export interface FileTally {
  readonly file: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly tables: readonly TableName[];
  readonly rows_read: number;
  readonly rows_new: number;
  readonly rows_known: number;
  readonly rows_to_fix: number;
  readonly rows_dropped: number;
  /** A sentence when the whole file could not be read, else null. */
  readonly unreadable: string | null;
  /** What was dropped or put right, one sentence with its count each. */
  readonly remarks: readonly string[];
  /** Keys of rows to fix that came back put right in a list, see `put-right.ts`; absent where there are none. */
  readonly put_right?: readonly string[];
}

export interface StoredTable {
  readonly table: TableName;
  readonly rows: number;
  readonly bytes: number;
  /** Of the stored (compressed) bytes, hex. */
  readonly sha256: string;
}

/** One import: taken in whole or not at all. */
export interface Batch {
  readonly id: string;
  /** 1, 2, 3 …: later imports win where a table keeps the newest row. */
  readonly import_no: number;
  readonly imported_at: string;
  readonly origin: "demo" | "files" | "bench" | "backup";
  readonly ledger_version: number;
  readonly files: readonly FileTally[];
  readonly tables: readonly StoredTable[];
  /** Set where the note of what it holds has changed on the disk: only its number is known, and all it can do is be taken out. */
  readonly broken?: true;
}

export interface NewBatch extends Omit<Batch, "id" | "import_no" | "ledger_version" | "tables" | "broken"> {
  readonly payloads: readonly { table: TableName; rows: number; stream: Uint8Array }[];
  readonly rejects: readonly Reject[];
}

/** Settings by name as they become, null where they are forgotten. */
export type Changed = Readonly<Record<string, string | null>>;

/**
 * The durable list of imports. Nothing is written before it was read once without fault, and each write is one
 * transaction that is on the disk when the promise resolves.
 *
 * @throws {LedgerFull} when the disk has no room; {LedgerNewer} when a later version of the app wrote it;
 * {LedgerDamaged} when stored rows do not match their checksum; {LedgerUnavailable} when the browser gives no storage
 */
export interface Ledger {
  /** In import order, broken ones too. */
  batches(): Promise<readonly Batch[]>;
  /** Arrow IPC stream of one table of one batch, unpacked and checked. */
  payload(batch: Batch, table: TableName): Promise<Uint8Array>;
  /**
   * Rows still to fix: of each file name those of the newest import that read it.
   *
   * @param without id of an import that is left out of account
   */
  rejects(without?: string): Promise<readonly Reject[]>;
  /**
   * @param in_place_of id of an import that goes out in the same transaction: never are both there, or neither
   * @throws {ImportGone} when that import is not there any more
   */
  append(batch: NewBatch, in_place_of?: string): Promise<Batch>;
  /** Puts one import and these settings in the place of everything, in one transaction. */
  replaceAll(batch: NewBatch, settings: Readonly<Record<string, string>>): Promise<Batch>;
  /**
   * Does work that reads the list of imports and then adds to it, while no other tab does such work or takes an import out.
   * `append` and `replaceAll` may be called inside, `remove`, `clear` and `alone` would wait for ever.
   */
  alone<T>(work: () => Promise<T>): Promise<T>;
  /**
   * Takes one whole import back. Of several tabs that do so at once only one does.
   *
   * @param settings what is kept (null: forgotten) in the same transaction, if the import was still there
   * @returns whether it was
   */
  remove(batch_id: string, settings?: Changed): Promise<boolean>;
  /** @param left settings that stand afterwards */
  clear(left?: Readonly<Record<string, string>>): Promise<void>;
  settings(): Promise<Readonly<Record<string, string>>>;
  setting(name: string): Promise<string | null>;
  /** Keeps a text whatever stands there. What follows from the text that stands there is kept by `changeSetting`. */
  keepSetting(name: string, value: string | null): Promise<void>;
  /**
   * Reads a setting and keeps what follows from it in one transaction, so that no other tab writes between the two. When it
   * stays the same nothing is written and nobody is told.
   *
   * @param change from what is kept (null: nothing) to what is to be kept; it cannot wait for anything
   * @returns what is kept now
   * @throws what `change` throws; nothing is changed then
   */
  changeSetting(name: string, change: (kept: string | null) => string | null): Promise<string | null>;
  /** Calls back when another tab changed the ledger; returns the way to stop. */
  onChange(callback: () => void): () => void;
  close(): void;
}
