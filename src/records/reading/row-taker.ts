import type { CheckedRow, Fault } from "../checking/row.ts";
import type { Reject } from "../ledger/ledger.ts";
import type { CsvRow } from "../formats/csv.ts";
import { Filling } from "./filling.ts";
import type { StagedRows, TakenFile } from "./filling.ts";
import type { Layout } from "./headings.ts";
import { BLANK, Counts, GUESSED, HEADINGS_AGAIN, SHORT } from "./remarks.ts";
import { RowShape } from "./row-shape.ts";
import { TicketsOfRows } from "./tickets-of-rows.ts";

/** Rows to fix kept with all their cells; a file with more of them has to be put right as a whole. */
const ROWS_IN_FULL = 20_000;

/** The ticket half of a sheet with one row a finding. */
interface TicketHalf {
  readonly filling: Filling;
  readonly tickets: TicketsOfRows;
  /** Place of the reel kind among the ticket's values. */
  readonly kind_at: number;
  /** Places of the cells that only a finding has. */
  readonly finding_cells: readonly number[];
}

function ticketHalf({ plans }: Layout, file: TakenFile, last_day: string): TicketHalf | null {
  const [plan, findings] = plans;
  if (!plan || !findings) return null;
  return {
    filling: new Filling(plan, file, last_day),
    tickets: new TicketsOfRows(plan),
    kind_at: plan.fields.findIndex(({ column }) => column.name === "reel_kind"),
    finding_cells: findings.fields.flatMap(({ at, column }) => (at === null || column.name === "ticket_no" ? [] : [at])),
  };
}

/** Sends each row of one file to where it belongs: checked and collected, to the rows to fix, or dropped and counted. */
export class RowTaker {
  readonly rejects: Reject[] = [];
  readonly counts = new Counts();
  rows_read = 0;
  rows_to_fix = 0;
  /** Rows that only repeat a ticket of an earlier row. */
  rows_known = 0;
  private readonly half: TicketHalf | null;
  private readonly main: Filling;
  private readonly shape: RowShape;
  private readonly file: TakenFile;
  private readonly headings: readonly string[];

  /** @param last_day newest day a date may name, `YYYY-MM-DD` */
  constructor(file: TakenFile, layout: Layout, last_day: string) {
    const plan = layout.plans.at(-1);
    if (!plan) throw new RangeError(`RowTaker: needs a layout with a table, got none for ${file.name}`);
    this.file = file;
    this.headings = layout.headings;
    this.main = new Filling(plan, file, last_day);
    this.half = ticketHalf(layout, file, last_day);
    this.shape = new RowShape(layout);
  }

  get rows_dropped(): number {
    return this.counts.of(BLANK) + this.counts.of(HEADINGS_AGAIN);
  }

  take(row: CsvRow): void {
    this.rows_read += 1;
    const dropped = this.shape.whyDropped(row);
    if (dropped !== null) return this.counts.add(dropped);
    const broken = this.shape.fault(row);
    if (broken) return this.reject(row, [broken]);
    if (this.shape.isShort(row)) this.counts.add(SHORT);
    if (this.half) this.takeBoth(row, this.half);
    else this.takeOne(this.main.checker.check(row.cells), row);
  }

  /** The tickets of a sheet of findings are whole only after its last row. */
  finish(): void {
    for (const ticket of this.half?.tickets.all() ?? []) {
      this.half?.filling.push(ticket, ticket.line);
      if (ticket.guessed.includes("came_in")) this.counts.add(GUESSED);
    }
  }

  staged(at_end: boolean): StagedRows[] {
    return [...(this.half?.filling.staged(at_end) ?? []), ...this.main.staged(at_end)];
  }

  private takeOne(row: CheckedRow, from: CsvRow): void {
    if (row.faults.length > 0) return this.reject(from, row.faults);
    this.main.push(row, from.line);
    for (const what of row.put_right) this.counts.add(what);
    if (row.guessed.length > 0) this.counts.add(GUESSED);
  }

  private takeBoth(row: CsvRow, { filling, tickets, kind_at, finding_cells }: TicketHalf): void {
    const { cells, line } = row;
    const ticket = filling.checker.check(cells), kind = ticket.values[kind_at], before = tickets.size;
    const alone = finding_cells.every((at) => (cells[at] ?? "").trim() === "");
    const finding = alone ? null : this.main.checker.check(cells, typeof kind === "string" ? kind : null);
    const own = withoutRepeats([...ticket.faults, ...(finding?.faults ?? [])]);
    const faults = own.length > 0 ? own : tickets.add(ticket, line);
    if (faults.length > 0) return this.reject(row, faults);
    if (finding) this.takeOne(finding, row);
    else if (tickets.size === before) this.rows_known += 1;
  }

  private reject({ line, cells }: CsvRow, faults: readonly Fault[]): void {
    this.rows_to_fix += 1;
    const own = this.rows_to_fix > ROWS_IN_FULL ? {} : { row: { headings: this.headings, cells } };
    for (const fault of faults) this.rejects.push({ file: this.file.name, line, ...fault, ...own });
  }
}

/** A cell that two tables share (the ticket's number) is wrong once. */
function withoutRepeats(faults: readonly Fault[]): readonly Fault[] {
  return faults.filter((fault, at) => faults.findIndex(({ column, reason }) => column === fault.column && reason === fault.reason) === at);
}
