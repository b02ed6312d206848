import { ArrowCollector } from "../arrow-rows.ts";
import { RowChecker } from "../checking/row.ts";
import type { CheckedRow, Fault } from "../checking/row.ts";
import type { TableName } from "../columns.ts";
import type { Reject } from "../ledger/ledger.ts";
import { RowKeys } from "../row-key.ts";
import type { CsvRow } from "./csv.ts";
import { plainHeading } from "./heading-words.ts";
import type { Layout, Plan } from "./headings.ts";
import { BLANK, Counts, GUESSED, HEADINGS_AGAIN, SHORT } from "./remarks.ts";
import { TicketsOfRows } from "./tickets-of-rows.ts";

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

/** One of the tables a file fills, with what its rows need on the way. */
class Filling {
  readonly checker: RowChecker;
  readonly collector: ArrowCollector;
  private readonly keys: RowKeys;
  private readonly file: TakenFile;

  constructor(plan: Plan, file: TakenFile, last_day: string) {
    this.checker = new RowChecker(plan, last_day);
    this.collector = new ArrowCollector(plan.table);
    this.keys = new RowKeys(plan.table);
    this.file = file;
  }

  push({ values, guessed }: Pick<CheckedRow, "values" | "guessed">, source_line: number): void {
    this.collector.push({
      values,
      came_in_guessed: guessed.includes("came_in"),
      file_no: this.file.file_no,
      source_file: this.file.name,
      source_line,
      row_key: this.keys.keyOf(values, guessed),
    });
  }
}

/** Sends each row of one file to where it belongs: checked and collected, to the rows to fix, or dropped and counted. */
export class RowTaker {
  readonly rejects: Reject[] = [];
  readonly counts = new Counts();
  rows_read = 0;
  rows_to_fix = 0;
  /** Rows that only repeat a ticket of an earlier row. */
  rows_known = 0;
  private readonly fillings: ReadonlyMap<TableName, Filling>;
  private readonly tickets: TicketsOfRows | null;
  private readonly main: Filling;
  private readonly file: TakenFile;
  private readonly layout: Layout;

  constructor(file: TakenFile, layout: Layout, last_day: string) {
    this.file = file;
    this.layout = layout;
    const made = layout.plans.map((plan) => [plan.table.name, new Filling(plan, file, last_day)] as const);
    this.fillings = new Map(made);
    const [first, last] = [layout.plans[0], made.at(-1)?.[1]];
    if (!first || !last) throw new RangeError(`RowTaker: needs a layout with a table, got none for ${file.name}`);
    this.main = last;
    this.tickets = layout.plans.length === 2 ? new TicketsOfRows(first) : null;
  }

  get rows_dropped(): number {
    return this.counts.of(BLANK) + this.counts.of(HEADINGS_AGAIN);
  }

  take(row: CsvRow): void {
    this.rows_read += 1;
    const dropped = this.whyDropped(row.cells);
    if (dropped !== null) return this.counts.add(dropped);
    const broken = this.shapeFaults(row);
    if (broken.length > 0) return this.reject(row.line, broken);
    if (row.cells.length < this.layout.headings.length) this.counts.add(SHORT);
    const ticket = this.tickets ? this.fillings.get("tickets")?.checker.check(row.cells) ?? null : null;
    this.check(row, ticket);
  }

  /** The tickets of a sheet of findings are whole only after its last row. */
  finish(): void {
    for (const ticket of this.tickets?.all() ?? []) {
      this.fillings.get("tickets")?.push(ticket, ticket.line);
      if (ticket.guessed.includes("came_in")) this.counts.add(GUESSED);
    }
  }

  /** Collected rows of every table that holds at least `least`. */
  staged(least: number): StagedRows[] {
    return [...this.fillings].filter(([, { collector }]) => collector.length > 0 && collector.length >= least)
      .map(([table, { collector }]) => ({ table, ...collector.take() }));
  }

  private check(row: CsvRow, ticket: CheckedRow | null): void {
    const at = this.layout.plans[0]?.fields.findIndex(({ column }) => column.name === "reel_kind") ?? -1;
    const kind = ticket?.values[at];
    if (ticket && this.hasNoFinding(row.cells)) return this.takeTicket(ticket, row.line);
    const main = this.main.checker.check(row.cells, typeof kind === "string" ? kind : null);
    const faults = withoutRepeats([...(ticket?.faults ?? []), ...main.faults]);
    if (faults.length > 0) return this.reject(row.line, faults);
    const contradicted = ticket && this.tickets ? this.tickets.add(ticket, row.line) : [];
    if (contradicted.length > 0) return this.reject(row.line, contradicted);
    this.main.push(main, row.line);
    for (const what of main.put_right) this.counts.add(what);
    if (main.guessed.includes("came_in")) this.counts.add(GUESSED);
  }

  /** A row of a sheet of findings that names a ticket and nothing found on it. */
  private hasNoFinding(cells: readonly string[]): boolean {
    const own = this.layout.plans[1]?.fields.filter(({ at, column }) => at !== null && column.name !== "ticket_no") ?? [];
    return own.every(({ at }) => (cells[at ?? -1] ?? "").trim() === "");
  }

  private takeTicket(ticket: CheckedRow, line: number): void {
    if (ticket.faults.length > 0 || !this.tickets) return this.reject(line, ticket.faults);
    const before = this.tickets.size, faults = this.tickets.add(ticket, line);
    if (faults.length > 0) this.reject(line, faults);
    else if (this.tickets.size === before) this.rows_known += 1;
  }

  private whyDropped(cells: readonly string[]): string | null {
    if (cells.every((cell) => cell.trim() === "")) return BLANK;
    const { headings } = this.layout;
    const again = cells.length === headings.length && cells.every((cell, at) => plainHeading(cell) === plainHeading(headings[at] ?? ""));
    return again ? HEADINGS_AGAIN : null;
  }

  private shapeFaults({ cells, line, lines, stray_quote }: CsvRow): Fault[] {
    const wide = this.layout.headings.length, extra = cells.slice(wide).find((cell) => cell.trim() !== "");
    if (stray_quote && lines > 1) {
      const reason = `a quotation mark in it does not end where the cell ends, so lines ${line} to ${line + lines - 1} were read as one row`;
      return [{ column: "", value: (cells[0] ?? "").slice(0, 200), reason }];
    }
    if (extra === undefined) return [];
    const reason = `the row has ${cells.length} cells and the heading row ${wide}`;
    return [{ column: "", value: extra.slice(0, 200), reason }];
  }

  private reject(line: number, faults: readonly Fault[]): void {
    this.rows_to_fix += 1;
    for (const fault of faults) this.rejects.push({ file: this.file.name, line, ...fault });
  }
}

/** A cell that two tables share (the ticket's number) is wrong once. */
function withoutRepeats(faults: readonly Fault[]): readonly Fault[] {
  if (faults.length < 2) return faults;
  return faults.filter((fault, at) => faults.findIndex(({ column, reason }) => column === fault.column && reason === fault.reason) === at);
}
