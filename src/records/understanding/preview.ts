import { openSheets } from "../formats/open-sheets.ts";
import type { NamedFile, Sheet, SheetRow } from "../formats/sheet.ts";
import { RowChecker } from "../checking/row.ts";
import { askedReadings, type AskedNote } from "../notes/asked-readings.ts";
import { withReadings } from "../notes/own-spellings.ts";
import { unknownWords } from "../notes/unknown-words.ts";
import { dayInWords } from "../checking/date-cell.ts";
import { knowsHeading, sheetWay } from "../reading/sheet-way.ts";
import type { SheetWay } from "../reading/sheet-way.ts";
import { position, positionNamed } from "../vocabulary.ts";
import type { Answers } from "./answers.ts";
import { dayAfterYear } from "./examine.ts";
import { rowMaker } from "./row-maker.ts";
import type { MadeRecord, RowEnd } from "./row-outcome.ts";
import { SheetTaker } from "./sheet-taker.ts";
import type { ExamineOptions, Preview, PreviewRow, Tally } from "./understanding.ts";

const FIRST = 20, EXAMPLES = 5, MOST_WORDS = 50;

const placeWords = (place: string) => (place.startsWith("?") ? `${place.slice(1)}, place not named` : positionNamed(place) === place ? position(place).name.toLowerCase() : place);

/** What a finding was read from, by which rule, and how often such readings are right. */
function origin({ note, rule, confidence }: MadeRecord["cells"]): string {
  if (!rule) return "";
  const right = confidence ? `, right ${Math.round(Number(confidence) * 100)} times in 100` : "";
  return ` (${note ? `“${note}”, ` : ""}${rule}${right})`;
}

/** One sentence for a record. */
function recordWords({ table, cells }: MadeRecord): string {
  const said = (column: string, before = "") => (cells[column] ? `${before}${cells[column]}` : "");
  if (table === "tickets") {
    const day = cells["received_on"] ? `, in ${dayInWords(cells["received_on"])}` : "";
    return `ticket ${cells["ticket_no"] ?? ""}: ${[cells["maker"], cells["model"]].filter(Boolean).join(" ")}${day}${said("job", ", ")}${said("labour_min", ", ")}${cells["labour_min"] ? " min" : ""}`;
  }
  if (table === "findings") return `${cells["action"] || "seen"}: ${placeWords(cells["position"] ?? "")}${said("qty", " ×")}${said("mode", ", ")}${said("size", ", ")}${origin(cells)}`;
  return `${table === "parts" ? "part" : table} ${cells["part_no"] ?? ""}${said("on_hand", ", on the shelf ")}${said("unit_cost", ", at ")}`;
}

class Tallies {
  private readonly all = new Map<string, { rows: number; examples: { line: number; value: string }[] }>();

  add(reason: string, line: number, value: string): void {
    const tally = this.all.get(reason) ?? { rows: 0, examples: [] };
    tally.rows += 1;
    if (tally.examples.length < EXAMPLES) tally.examples.push({ line, value: value.slice(0, 120) });
    this.all.set(reason, tally);
  }

  list(): Tally[] {
    return [...this.all].map(([reason, tally]) => ({ reason, ...tally })).sort((a, b) => b.rows - a.rows);
  }
}

/** A reason with the column it is about, where the reason does not begin with it. */
const inColumn = (column: string, reason: string): string => (column === "" || reason.startsWith(column) ? reason : `${column}: ${reason}`);

/** Quoted values differ from row to row; the reason they share does not. */
const kindOfReason = (reason: string): string => reason.replace(/^“[^”]*”/, "what stands there").replace(/“[^”]*”/g, "“…”").replace(/\d+ [A-Z][a-z]+ \d{4}/g, "…");

class Collected {
  rows_read = 0;
  readonly records: Record<string, number> = {};
  readonly to_fix = new Tallies();
  readonly dropped = new Tallies();
  readonly remarks: string[] = [];
  readonly first: PreviewRow[] = [];
  readonly unknown: { readonly text: string; readonly unknown: readonly string[] }[] = [];
  readonly asked: AskedNote[] = [];

  end({ row, outcome }: RowEnd, sheet: string | null): void {
    const fault = outcome.end === "to fix" ? outcome.faults[0] : undefined;
    if (fault) this.to_fix.add(inColumn(fault.column, kindOfReason(fault.reason)), row.line, fault.value);
    if (outcome.end === "known") this.dropped.add("repeats an earlier row", row.line, row.cells[0] ?? "");
    if (outcome.end === "dropped") this.dropped.add(outcome.reason, row.line, row.cells.find((cell) => cell.trim() !== "") ?? "");
    if (outcome.end === "in") for (const { table } of outcome.records) this.records[table] = (this.records[table] ?? 0) + 1;
    if (this.first.length >= FIRST) return;
    const not_in = (fault && inColumn(fault.column, fault.reason)) ?? (outcome.end === "known" ? "repeats an earlier row" : outcome.end === "dropped" ? outcome.reason : null);
    this.first.push({ sheet, line: row.line, raw: row.cells, understood: outcome.end === "in" ? outcome.records.map(recordWords) : [], not_in });
  }
}

async function understoodRows(sheet: Sheet, { plan }: SheetWay & { way: "understood" }, file: string, options: ExamineOptions, into: Collected): Promise<void> {
  const last_day = dayAfterYear(options.today), maker = rowMaker(plan, file, last_day, withReadings(options.book ?? null, options.remembered?.notes ?? [])), taker = new SheetTaker({ name: file, file_no: 1 }, plan, maker, last_day);
  for await (const rows of sheet.rows()) {
    options.signal.throwIfAborted();
    for (const row of rows) {
      const { heading_line } = plan.start;
      if (heading_line === null || row.line > heading_line) for (const end of taker.take(row)) into.end(end, sheet.name);
      else if (row.line < heading_line) taker.passOver("passed over above the headings");
    }
    taker.staged(false);
  }
  for (const end of taker.finish()) into.end(end, sheet.name);
  into.rows_read += taker.rows_read;
  into.remarks.push(...taker.remarks());
  for (const one of maker.findings.unknown) into.unknown.push(one);
  for (const one of maker.findings.asked) into.asked.push(one);
}

async function tableRows(sheet: Sheet, { layout, heading_line }: SheetWay & { way: "table" }, options: ExamineOptions, into: Collected): Promise<void> {
  const checkers = layout.plans.map((plan) => ({ name: plan.table.name, plan, checker: new RowChecker(plan, dayAfterYear(options.today)) })), tickets = new Set<string>();
  const seen = (row: SheetRow): RowEnd => {
    if (row.cells.every((cell) => cell.trim() === "")) return { row, outcome: { end: "dropped", reason: "dropped as blank" } };
    const read = checkers.map(({ name, plan, checker }) => ({ name, plan, checked: checker.check(row.cells) })), faults = read.flatMap(({ checked }) => checked.faults);
    if (faults.length > 0) return { row, outcome: { end: "to fix", faults } };
    const records = read.map(({ name, plan, checked }): MadeRecord => ({ table: name, cells: Object.fromEntries(plan.fields.map(({ column }, at) => [column.name, String(checked.values[at] ?? "")])) }));
    // In a sheet with one row a finding its ticket is made once.
    return { row, outcome: { end: "in", records: records.filter(({ table, cells }) => records.length === 1 || table !== "tickets" || !tickets.has(cells["ticket_no"] ?? "") && tickets.add(cells["ticket_no"] ?? "")) } };
  };
  for await (const rows of sheet.rows()) {
    options.signal.throwIfAborted();
    for (const row of rows.filter(({ line }) => line > heading_line)) {
      into.rows_read += 1;
      into.end(seen(row), sheet.name);
    }
  }
}

/**
 * What a file would bring with these answers; nothing is written.
 *
 * @throws {Unreadable} as `examine` does
 * @throws the signal's reason when cancelled
 */
export async function preview(file: NamedFile, answers: Answers, options: Omit<ExamineOptions, "remembered">): Promise<Preview> {
  const { signal, report, models } = options, into = new Collected(), last_day = dayAfterYear(options.today);
  const onBytes = (done: number) => report({ step: `Trying ${file.name}`, done, total: file.blob.size, rows: into.rows_read });
  const { sheets } = await openSheets(file, { signal, onBytes, isKnownHeading: knowsHeading(null) }), whole = { ...options, remembered: answers };
  for (const sheet of sheets) {
    const way = await sheetWay(sheet, { file: file.name, mapping: null, answers, models, last_day, signal, only: sheets.length === 1 });
    if (way.way === "understood") await understoodRows(sheet, way, file.name, whole, into);
    if (way.way === "table") await tableRows(sheet, way, whole, into);
  }
  const { rows_read, records, remarks, first } = into;
  return { rows_read, records, rows_to_fix: into.to_fix.list(), rows_dropped: into.dropped.list(), remarks, first, unknown_words: unknownWords(into.unknown).slice(0, MOST_WORDS),
    asked_readings: askedReadings(into.asked).slice(0, MOST_WORDS), staying_out: into.asked.reduce((sum, { asked }) => sum + asked.length, 0) };
}
