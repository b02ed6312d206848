import { ArrowCollector } from "../arrow-rows.ts";
import { RowChecker } from "../checking/row.ts";
import type { CheckedRow } from "../checking/row.ts";
import type { TableName } from "../columns.ts";
import { RowKeys } from "../row-key.ts";
import type { Plan } from "./headings.ts";

/** Rows of one table that passed every check, as they go to the engine. */
export interface StagedRows {
  readonly table: TableName;
  readonly rows: number;
  readonly stream: Uint8Array<ArrayBuffer>;
}

export interface TakenFile {
  readonly name: string;
  readonly file_no: number;
}

/** What a finding was read from, or what was written in place of a ticket's columns; null for one that was worked out. */
export type AsWritten = string | Readonly<Record<string, string | null>>;

/** Rows that go to the engine at once: one of its row groups, which it takes in half the time of pieces that do not fill one. */
const STAGED_ROWS = 122_880;

/** One of the tables a file fills, with what its rows need on the way. */
export class Filling {
  readonly checker: RowChecker;
  private readonly collector: ArrowCollector;
  private readonly keys: RowKeys;
  private readonly file: TakenFile;
  readonly table: TableName;
  private readonly names: readonly string[];
  private readonly ticket_at: number;
  private ready: StagedRows[] = [];

  constructor(plan: Plan, file: TakenFile, last_day: string) {
    this.checker = new RowChecker(plan, last_day);
    this.collector = new ArrowCollector(plan.table, STAGED_ROWS);
    this.keys = new RowKeys(plan.table);
    this.file = file;
    this.table = plan.table.name;
    this.names = plan.fields.map(({ column }) => column.name);
    this.ticket_at = plan.fields.findIndex(({ column }) => column.name === "ticket_no");
  }

  /** @param as_written what the row has the same key by in every import, whatever is made of it by then; null for its values */
  push({ values, guessed }: Pick<CheckedRow, "values" | "guessed">, source_line: number, as_written: AsWritten | null = null): void {
    const { name: source_file, file_no } = this.file, row_key = this.keyOf(values, guessed, as_written);
    this.collector.push({ values, came_in_guessed: guessed.includes("came_in"), file_no, source_file, source_line, row_key });
    if (this.collector.is_full) this.ready.push({ table: this.table, ...this.collector.take() });
  }

  private keyOf(values: CheckedRow["values"], guessed: readonly string[], as_written: AsWritten | null): string {
    if (as_written === null) return this.keys.keyOf(values, guessed);
    if (typeof as_written === "string") return this.keys.keyOf(this.ofWords(values, as_written));
    const written = new Map(Object.entries(as_written));
    return this.keys.keyOf(values.map((value, at) => written.get(this.names[at] ?? "") ?? (written.has(this.names[at] ?? "") ? null : value)), guessed);
  }

  private ofWords(values: CheckedRow["values"], words: string): CheckedRow["values"] {
    return values.map((value, at) => (at === this.ticket_at ? value : at === values.length - 1 ? words : null));
  }

  /** Rows to send on; only full loads, unless the file is at its end. */
  staged(at_end: boolean): StagedRows[] {
    if (at_end && this.collector.length > 0) this.ready.push({ table: this.table, ...this.collector.take() });
    const { ready } = this;
    this.ready = [];
    return ready;
  }
}
