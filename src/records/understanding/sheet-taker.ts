import type { CheckedRow, Fault } from "../checking/row.ts";
import { table } from "../columns.ts";
import type { TableName } from "../columns.ts";
import type { SheetRow } from "../formats/sheet.ts";
import type { Reject } from "../ledger/ledger.ts";
import { Filling } from "../reading/filling.ts";
import type { AsWritten, StagedRows, TakenFile } from "../reading/filling.ts";
import type { Plan } from "../reading/headings.ts";
import { Counts, GUESSED } from "../reading/remarks.ts";
import type { MadeRecord, RowEnd, RowMaker, RowOutcome } from "./row-outcome.ts";
import type { SheetPlan } from "./sheet-plan.ts";

interface Checked { readonly filling: Filling; readonly row: CheckedRow; readonly as_written: AsWritten | null }

/** Rows to fix kept with all their cells; a file with more of them has to be put right as a whole. */
const ROWS_IN_FULL = 20_000;
const LEFT_OUT = "a finding read from words broke a rule of the records and was left out";

/** Our columns in their order, each with the heading it comes from in the file. */
function identityPlan(name: TableName, headings: ReadonlyMap<string, string>): Plan {
  const own = table(name);
  return { table: own, fields: own.columns.map((column, at) => ({ column, at, constant: null, convert: null, heading: headings.get(column.name) ?? column.name, values: null })) };
}

/** Sends what a maker makes of a sheet's rows through the checks that every record passes, and counts where each row ends. */
export class SheetTaker {
  readonly rejects: Reject[] = [];
  readonly counts = new Counts();
  /** Records by table. */
  readonly records = new Map<TableName, number>();
  rows_read = 0;
  rows_to_fix = 0;
  rows_known = 0;
  rows_dropped = 0;
  private readonly fillings = new Map<TableName, Filling>();
  private readonly headings: ReadonlyMap<string, string>;
  private readonly maker: RowMaker;
  private readonly plan: SheetPlan;
  private readonly file: TakenFile;
  private readonly last_day: string;

  constructor(file: TakenFile, plan: SheetPlan, maker: RowMaker, last_day: string) {
    this.file = file;
    this.plan = plan;
    this.maker = maker;
    this.last_day = last_day;
    this.headings = new Map(plan.means.flatMap((means, at) => (means === null ? [] : [[means === "reel" ? "model" : means, plan.start.labels[at] ?? ""] as const])));
  }

  get tables(): TableName[] {
    return [...this.fillings.keys()];
  }

  async prepare(rows: readonly SheetRow[]): Promise<void> {
    await this.maker.prepare?.(rows);
  }

  /** @returns the ends of the rows that are settled now */
  take(row: SheetRow): RowEnd[] {
    this.rows_read += 1;
    return this.maker.take(row).map((end) => this.end(end));
  }

  finish(): RowEnd[] {
    return this.maker.finish().map((end) => this.end(end));
  }

  /** A row above the headings, which holds a title or nothing. */
  passOver(why: string): void {
    this.rows_read += 1;
    this.rows_dropped += 1;
    this.counts.add(why);
  }

  staged(at_end: boolean): StagedRows[] {
    return [...this.fillings.values()].flatMap((filling) => filling.staged(at_end));
  }

  remarks(): string[] {
    return [...this.counts.sentences(), ...this.maker.remarks.sentences()];
  }

  private end({ row, outcome }: RowEnd): RowEnd {
    const settled = outcome.end === "in" ? this.checked(row, outcome.records) : outcome;
    if (settled.end === "known") this.rows_known += 1;
    if (settled.end === "dropped") {
      this.rows_dropped += 1;
      this.counts.add(settled.reason);
    }
    if (settled.end === "to fix") this.reject(row, settled.faults);
    return { row, outcome: settled };
  }

  private filling(name: TableName): Filling {
    let filling = this.fillings.get(name);
    if (!filling) this.fillings.set(name, (filling = new Filling(identityPlan(name, this.headings), this.file, this.last_day)));
    return filling;
  }

  private check({ table: name, cells }: MadeRecord, kind: string | null): { filling: Filling; row: CheckedRow } {
    const filling = this.filling(name);
    return { filling, row: filling.checker.check(table(name).columns.map((column) => cells[column.name] ?? ""), kind) };
  }

  /** All records of a row, or none: a ticket that breaks a rule keeps its findings out. */
  private checked(row: SheetRow, records: readonly MadeRecord[]): RowOutcome {
    const kind = records.find(({ table: name }) => name === "tickets")?.cells["reel_kind"] ?? null, all: Checked[] = [], kept: MadeRecord[] = [];
    for (const record of records) {
      const first = this.check(record, kind), words = record.words ?? null;
      const found = first.row.faults.length > 0 && words !== null ? this.check(this.mended(record, first.row.faults), kind) : first;
      if (found.row.faults.length > 0 && words === null) return { end: "to fix", faults: found.row.faults };
      if (found.row.faults.length > 0) this.counts.add(LEFT_OUT);
      else {
        all.push({ ...found, as_written: words ?? record.written ?? null });
        kept.push(record);
      }
    }
    for (const { filling, row: checked, as_written } of all) this.push(filling, checked, as_written, row.line);
    return { end: "in", records: kept };
  }

  private push(filling: Filling, checked: CheckedRow, as_written: AsWritten | null, line: number): void {
    filling.push(checked, line, as_written);
    this.records.set(filling.table, (this.records.get(filling.table) ?? 0) + 1);
    if (checked.guessed.length > 0) this.counts.add(GUESSED);
  }

  /** What a text seems to say of a part is dropped where it breaks a rule; the finding itself stays. */
  private mended(record: MadeRecord, faults: readonly Fault[]): MadeRecord {
    const bad = new Set(faults.map(({ column }) => column));
    return { ...record, cells: Object.fromEntries(Object.entries(record.cells).filter(([column]) => !bad.has(this.headings.get(column) ?? column))) };
  }

  private reject({ line, cells }: SheetRow, faults: readonly Fault[]): void {
    this.rows_to_fix += 1;
    const own = this.rows_to_fix > ROWS_IN_FULL ? {} : { row: { headings: this.plan.start.headings, cells } };
    for (const fault of faults) this.rejects.push({ file: this.file.name, line, ...fault, ...own });
  }
}
