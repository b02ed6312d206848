import { BLANK, HEADINGS_AGAIN } from "../reading/remarks.ts";
import { Wrong } from "../checking/wrong.ts";
import type { Fault } from "../checking/row.ts";
import type { SheetRow } from "../formats/sheet.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import { ownerTag } from "../owner-tags.ts";
import { saysNothing } from "./cells/said.ts";
import { MadeNumbers } from "./cells/ticket-number.ts";
import type { Conventions } from "./conventions.ts";
import { jobCell, isTime, jobTime, WAITED } from "./job-cells.ts";
import type { CellContext, JobTime } from "./job-cells.ts";
import { jobRecords } from "./job-records.ts";
import type { JobText } from "./job-records.ts";
import { RepeatedRows } from "./repeated-rows.ts";
import { RowFindings } from "./row-findings.ts";
import type { NotesRead } from "./row-findings.ts";
import { FixCounts } from "./row-outcome.ts";
import type { RowEnd, RowMaker, RowOutcome } from "./row-outcome.ts";
import { Dittos, NO_JOB, TOTALS, isFilled, isHeadings, isTotals } from "./row-shapes.ts";
import { partColumn, slotOf } from "./meanings.ts";
import type { SheetPlan } from "./sheet-plan.ts";

/** One row's cells, read; what findings and several reels make of it comes after. */
export interface ReadJob {
  readonly line: number;
  /** Our columns → text in our spelling. */
  readonly cells: Map<string, string>;
  readonly texts: JobText[];
  time: JobTime | null;
  readonly customer: string[];
  /** Stands for the owner where there is no serial. */
  owner_tag: string | null;
  /** Cells nothing was made of, kept in the note as `heading: text`. */
  readonly left_over: string[];
  /** Positions of part columns with their pieces, and what faults and actions of slots say. */
  readonly parts: { readonly position: string; readonly qty: string; readonly heading: string }[];
  readonly slots: Map<number, { fault: string; action: string; heading: string }>;
  readonly ditto: ReadonlySet<string>;
  /** All cells, for numbers that are made. */
  readonly content: string;
}

interface Field { readonly at: number; readonly means: string; readonly heading: string; readonly values: ReadonlyMap<string, string> }

export interface JobOptions {
  readonly plan: SheetPlan;
  readonly conventions: Conventions;
  readonly last_day: string;
  readonly book: SpellingBook | null;
  readonly owner_salt: string | null;
  readonly notes_read: NotesRead;
}

const KEYS = new Set(["ticket_no", "received_on", "reel", "model"]);
const TEXTS: Readonly<Record<string, JobText["cell"]>> = { work_text: "note", parts_text: "parts", complaint_work_text: "complaint and note", checked_text: "note" };
const NO_DAY: Fault = { column: "received_on", value: "", reason: "no column says the day it came in; say which one it is when you bring the file in again" };

/** Makes tickets and findings of a sheet with one row a job. */
export class JobRows implements RowMaker {
  readonly remarks = new FixCounts();
  readonly findings: RowFindings;
  private readonly options: JobOptions;
  private readonly fields: readonly Field[];
  private readonly dittos = new Dittos();
  private readonly repeated: RepeatedRows;
  private readonly numbers = new MadeNumbers();
  private year: number | null;
  private last_month = 0;
  private readonly contexts = new Map<string, CellContext>();
  private readonly owner_tags = new Map<string, string | null>();

  constructor(options: JobOptions) {
    this.options = options;
    const { means, start, answers } = options.plan;
    this.findings = new RowFindings(options.book, this.remarks, options.notes_read);
    this.year = options.conventions.year;
    this.fields = means.flatMap((one, at) => {
      if (one === null) return [];
      const values = new Map((answers?.values ?? []).filter(({ column }) => column === one).map(({ word, ours }) => [word.trim().toLowerCase(), ours]));
      return [{ at, means: one, heading: start.labels[at] ?? "", values }];
    });
    this.repeated = new RepeatedRows(this.fields);
  }

  /** Tags of the owners these rows name. */
  async prepare(rows: readonly SheetRow[]): Promise<void> {
    const { owner_salt } = this.options, at = this.fields.find(({ means }) => means === "owner")?.at;
    if (owner_salt === null || at === undefined) return;
    for (const name of new Set(rows.map(({ cells }) => (cells[at] ?? "").trim()))) {
      if (!this.owner_tags.has(name)) this.owner_tags.set(name, await ownerTag(name, owner_salt));
    }
  }

  take(row: SheetRow): readonly RowEnd[] {
    return [{ row, outcome: this.outcome(row) }];
  }

  finish(): readonly RowEnd[] {
    return [];
  }

  private outcome(row: SheetRow): RowOutcome {
    const { headings, labels } = this.options.plan.start;
    if (!row.cells.some(isFilled)) return { end: "dropped", reason: BLANK };
    if (isHeadings(row.cells, headings)) return { end: "dropped", reason: HEADINGS_AGAIN };
    const { cells, ditto } = this.dittos.filled(row.cells), key_filled = this.fields.some(({ at, means }) => KEYS.has(means) && isFilled(cells[at] ?? ""));
    if (isTotals(cells, key_filled)) return { end: "dropped", reason: TOTALS };
    if (this.isNoJob(cells)) return { end: "dropped", reason: NO_JOB };
    const extra = cells.slice(labels.length).find(isFilled);
    if (extra !== undefined) return { end: "to fix", faults: [{ column: "", value: extra.slice(0, 200), reason: `the row has ${cells.length} cells and the heading row ${labels.length}; a cell may hold a separator` }] };
    if (row.stray_quote && row.lines > 1) return { end: "to fix", faults: [{ column: "", value: (cells[0] ?? "").slice(0, 200), reason: `a quotation mark in it does not end where the cell ends, so lines ${row.line} to ${row.line + row.lines - 1} were read as one row` }] };
    const again = this.repeated.why(cells);
    if (again !== null) return again === "known" ? { end: "known" } : { end: "dropped", reason: again };
    return this.made(row, cells, ditto);
  }

  /** One filled cell without a day or a number tells of no job (`phone re bruskar - no`). */
  private isNoJob(cells: readonly string[]): boolean {
    if (cells.filter(isFilled).length > 1) return false;
    return !this.fields.some(({ at, means }) => (means === "received_on" || means === "ticket_no") && isFilled(cells[at] ?? ""));
  }

  private made(row: SheetRow, cells: readonly string[], ditto: ReadonlySet<number>): RowOutcome {
    const faults: Fault[] = [], job: ReadJob = {
      line: row.line, cells: new Map(), texts: [], time: null, customer: [], owner_tag: null, left_over: [], parts: [], slots: new Map(),
      ditto: new Set(this.fields.filter(({ at }) => ditto.has(at)).map(({ means }) => means)), content: cells.join("\u001f"),
    };
    if (ditto.size > 0) this.remarks.add("ditto marks were copied down from the row above", "″", (cells[[...ditto][0] ?? 0] ?? "").trim());
    for (const field of this.fields) {
      const text = (cells[field.at] ?? "").trim();
      if (text !== "") this.readCell(field, text, job, faults);
    }
    for (const { column, value } of this.options.plan.answers?.constants ?? []) if (!job.cells.has(column)) job.cells.set(column, value);
    if (job.owner_tag !== null && !job.cells.has("serial")) job.cells.set("serial", job.owner_tag);
    if (!job.cells.has("received_on") && faults.length === 0) faults.push(this.missingDay());
    if (faults.length > 0) return { end: "to fix", faults };
    return jobRecords(job, { names: this.options.plan.names, numbers: this.numbers, findings: this.findings, fixes: this.remarks, routine: this.options.conventions.routine, reel_heading: this.headingOf("reel") ?? this.headingOf("model"), day_heading: this.headingOf("received_on") });
  }

  private headingOf(means: string): string | null {
    return this.fields.find((field) => field.means === means)?.heading ?? null;
  }

  private missingDay(): Fault {
    const heading = this.headingOf("received_on");
    return heading === null ? NO_DAY : { column: heading, value: "", reason: `${heading} is empty` };
  }

  /** Made once a column, and again when the year moves on. */
  private context(heading: string): CellContext {
    const before = this.contexts.get(heading);
    if (before && before.year === this.year) return before;
    const context = { ...this.options.conventions, year: this.year, last_day: this.options.last_day, heading, fixes: this.remarks };
    this.contexts.set(heading, context);
    return context;
  }

  private readCell({ means, heading, values }: Field, written: string, job: ReadJob, faults: Fault[]): void {
    const text = values.get(written.toLowerCase()) ?? written, cell = TEXTS[means], part = partColumn(means), slot = slotOf(means);
    if (text === "") return;
    if (cell) job.texts.push({ means, heading, text, cell });
    else if (means === "customer") job.customer.push(text);
    else if (means === "owner") job.owner_tag = this.owner_tags.get(written) ?? null;
    else if (means === "note" || means === "complaint") job.cells.set(means, [job.cells.get(means), text].filter((one) => one).join("; "));
    else if (part !== null) job.parts.push({ position: part, qty: /^\d+$/.test(text) ? text : "1", heading });
    else if (slot) job.slots.set(slot.nth, { fault: "", action: "", ...job.slots.get(slot.nth), [slot.what]: text, heading });
    else if (isTime(means)) this.readTime(means, heading, text, job);
    else this.readValue(means, heading, text, job, faults);
  }

  private readTime(means: string, heading: string, text: string, job: ReadJob): void {
    job.time = jobTime(means, text, this.context(heading));
    if (job.time !== null || saysNothing(text)) return;
    job.left_over.push(`${heading}: ${text}`);
    this.remarks.add(/\d/.test(text) ? WAITED : `what ${heading} says is no time; it was kept in the note`, text, "empty");
  }

  private readValue(means: string, heading: string, text: string, job: ReadJob, faults: Fault[]): void {
    if (means === "received_on") this.rollYear(text);
    const ours = means === "salt_flag" ? "water" : means;
    const mended = means === "ticket_no" ? this.options.plan.numbers.mended(text) : text;
    if (mended !== text) this.remarks.add("a letter in a ticket number was read as a figure", text, mended);
    const read = jobCell(means, mended, this.context(heading));
    if (read instanceof Wrong && (means === "received_on" || /currency|could be/.test(read.reason))) faults.push({ column: heading, value: text, reason: read.reason });
    else if (typeof read === "string") job.cells.set(ours, read);
    else if (!saysNothing(text) && !(means === "finished_on" && read === null)) {
      job.left_over.push(`${heading}: ${text}`);
      this.remarks.add(`what ${heading} says fits none of our words; it was kept in the note`, text, "empty");
    }
  }

  /** Dates without a year run on from row to row: from December to January the year goes up. */
  private rollYear(text: string): void {
    if (this.year === null || this.options.plan.dates.without_year === 0) return;
    const day = jobCell("received_on", text, { ...this.context(""), fixes: new FixCounts() });
    if (typeof day !== "string") return;
    const month = Number(day.slice(5, 7)), own = Number(day.slice(0, 4));
    if (own !== this.year) this.year = own;
    else if (this.last_month >= 11 && month <= 2) this.year += 1;
    this.last_month = month;
  }
}
