import { Field, RecordBatch, Schema, Struct, Table as ArrowTable, makeData, tableToIPC } from "apache-arrow";
import type { DataType } from "apache-arrow";
import { arrowColumn, keyColumn } from "./arrow-columns.ts";
import type { ArrowColumn } from "./arrow-columns.ts";
import type { CellValue } from "./checking/cell.ts";
import type { Kind, Table } from "./columns.ts";

/** Rows of one table as an Arrow IPC stream, with their number. */
export interface ArrowRows {
  readonly rows: number;
  readonly stream: Uint8Array<ArrayBuffer>;
}

/** Columns every staged row has beside those of its table, in this order; then comes its key. */
const ORIGIN: readonly (readonly [string, Kind])[] = [["file_no", "whole"], ["source_file", "text"], ["source_line", "whole"]];
const GUESSED = ["came_in_guessed", "yes_no"] as const;

export interface StagedRow {
  /** One for each column of the table, in its order. */
  readonly values: readonly CellValue[];
  readonly came_in_guessed: boolean;
  readonly file_no: number;
  readonly source_file: string;
  readonly source_line: number;
  readonly row_key: string;
}

/** Collects checked rows of one table and gives them out as an Arrow IPC stream. */
export class ArrowCollector {
  length = 0;
  private readonly names: readonly string[];
  private readonly kinds: readonly Kind[];
  private readonly own: number;
  private readonly has_guess: boolean;
  private columns: ArrowColumn[] = [];
  private readonly most: number;

  /** @param most rows it holds before they have to be taken */
  constructor(table: Table, most: number) {
    this.most = most;
    this.own = table.columns.length;
    this.has_guess = table.name === "tickets";
    const all = [...table.columns.map(({ name, kind }) => [name, kind] as const), ...(this.has_guess ? [GUESSED] : []), ...ORIGIN];
    this.names = [...all.map(([name]) => name), "row_key"];
    this.kinds = all.map(([, kind]) => kind);
    this.empty();
  }

  get is_full(): boolean {
    return this.length === this.most;
  }

  /** @throws {RangeError} when the rows collected before have to be taken first */
  push(row: StagedRow): void {
    if (this.is_full) throw new RangeError(`push: needs take() after ${this.most} rows`);
    for (let at = 0; at < this.own; at += 1) this.columns[at]?.push(row.values[at] ?? null);
    let at = this.own;
    if (this.has_guess) this.columns[at++]?.push(row.came_in_guessed);
    this.columns[at++]?.push(row.file_no);
    this.columns[at++]?.push(row.source_file);
    this.columns[at++]?.push(row.source_line);
    this.columns[at]?.push(row.row_key);
    this.length += 1;
  }

  /** The rows collected so far; the collector starts anew. */
  take(): ArrowRows {
    const children = this.columns.map((one) => one.data());
    const schema = new Schema(children.map(({ type }, at) => new Field(this.names[at] ?? "", type as DataType, true)));
    const struct = makeData({ type: new Struct(schema.fields), length: this.length, nullCount: 0, children });
    const stream = tableToIPC(new ArrowTable([new RecordBatch(schema, struct)]), "stream") as Uint8Array<ArrayBuffer>;
    const rows = this.length;
    this.empty();
    return { rows, stream };
  }

  private empty(): void {
    this.columns = [...this.kinds.map((kind) => arrowColumn(kind, this.most)), keyColumn(this.most)];
    this.length = 0;
  }
}
