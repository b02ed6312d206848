import { openSheets } from "../formats/open-sheets.ts";
import type { NamedFile, OpenedFile, Sheet } from "../formats/sheet.ts";
import { Unreadable } from "../formats/unreadable.ts";
import type { Layout } from "../reading/headings.ts";
import { knowsHeading, sheetWay } from "../reading/sheet-way.ts";
import type { Answers, SheetAnswers } from "./answers.ts";
import { answersFor, completeAnswers } from "./conventions.ts";
import { questionsOf } from "./questions.ts";
import { rowMaker } from "./row-maker.ts";
import { withRoutineParts } from "./routine-parts.ts";
import { shapeKey } from "./shape-key.ts";
import { headSize } from "./sheet-plan.ts";
import type { SheetPlan } from "./sheet-plan.ts";
import type { ColumnUnderstanding, ExamineOptions, FileUnderstanding, Fix, Question, SheetUnderstanding } from "./understanding.ts";
import { understoodRemarks } from "./understood-remarks.ts";

const KINDS: Readonly<Record<SheetAnswers["kind"], string>> = {
  jobs: "one row a job", till: "a till's sales, one line an item", stock: "a stock list, one line a part", table: "a table as the records have it", "left out": "left out",
};
const SEPARATORS: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs", "|": "upright strokes" };

/** One sheet as seen, with what it leaves open and what is settled for it. */
interface Seen {
  readonly understanding: SheetUnderstanding;
  readonly questions: readonly Question[];
  readonly answers: SheetAnswers;
}

function columnsOf(plan: SheetPlan): ColumnUnderstanding[] {
  return plan.start.labels.map((label, at) => {
    const look = plan.looks[at], guess = plan.guesses[at], means = plan.means[at] ?? null, own = means === guess?.means;
    return { label, at, sample: look?.sample ?? [], filled: look?.filled ?? 0, means, sure: own ? guess?.sure ?? "not known" : "certain", why: own ? guess?.why ?? "" : "you said so" };
  });
}

/** What would be put right, seen by reading the first rows. */
async function fixesOf(plan: SheetPlan, file: string, last_day: string, book: ExamineOptions["book"]): Promise<Fix[]> {
  if (plan.kind === "left out") return [];
  const maker = rowMaker(plan, file, last_day, book ?? null), head = await plan.sheet.head(headSize);
  for (const row of head) if (plan.start.heading_line === null || row.line > plan.start.heading_line) maker.take(row);
  maker.finish();
  return maker.remarks.all();
}

async function understood(seen: SheetPlan, file: string, several: boolean, { last_day, book, signal }: { last_day: string; book: ExamineOptions["book"]; signal: AbortSignal }): Promise<Seen> {
  const plan = await withRoutineParts(seen, (one) => rowMaker(one, file, last_day, book ?? null), signal);
  const { sheet, kind, start, rows, dates, currencies } = plan, { order, proved, why, against } = dates.settled(currencies.has("GBP"));
  const understanding: SheetUnderstanding = {
    sheet: sheet.name, kind, kind_in_words: KINDS[kind], heading_line: start.heading_line, rows, columns: columnsOf(plan),
    dates: dates.numbered + dates.year_first === 0 ? null : { order, proved, why, against }, fixes: await fixesOf(plan, file, last_day, book), remarks: understoodRemarks(plan, file),
  };
  return { understanding, questions: questionsOf(plan, file, several), answers: completeAnswers(plan, file) };
}

async function asTable(sheet: Sheet, layout: Layout, heading_line: number): Promise<Seen> {
  const head = (await sheet.head(headSize)).filter(({ line }) => line > heading_line), fields = layout.plans.flatMap((plan) => plan.fields);
  const columns = layout.headings.map((label, at): ColumnUnderstanding => {
    const field = fields.find((one) => one.at === at), cells = head.map(({ cells: row }) => (row[at] ?? "").trim()).filter((cell) => cell !== "");
    return { label, at, sample: [...new Set(cells)].slice(0, 5), filled: cells.length, means: field?.column.name ?? null, sure: field ? "certain" : "not known", why: field ? "its heading says so" : "no table of ours has such a column" };
  });
  const understanding: SheetUnderstanding = {
    sheet: sheet.name, kind: "table", kind_in_words: `${KINDS.table}: ${layout.plans.map(({ table }) => table.name).join(" and ")}`,
    heading_line, rows: head.length, columns, dates: null, fixes: [], remarks: layout.missing.map((column) => `No column is ${column}, which every row needs.`),
  };
  return { understanding, questions: [], answers: { ...nothing(sheet.name), kind: "table" } };
}

const nothing = (sheet: string | null): SheetAnswers =>
  ({ sheet, kind: "left out", columns: [], dates: null, decimal: null, year: null, currency: null, values: [], constants: [] });

function leftOut(sheet: Sheet, why: string): Seen {
  const understanding: SheetUnderstanding = {
    sheet: sheet.name, kind: "left out", kind_in_words: KINDS["left out"], heading_line: null, rows: 0, columns: [], dates: null, fixes: [], remarks: [why],
  };
  return { understanding, questions: [], answers: nothing(sheet.name) };
}

async function seenSheet(sheet: Sheet, file: string, several: boolean, options: ExamineOptions): Promise<Seen> {
  const last_day = dayAfterYear(options.today), { remembered, models, signal, book } = options;
  try {
    const way = await sheetWay(sheet, { file, mapping: null, answers: remembered, models, last_day, signal, only: !several });
    if (way.way === "understood") return await understood(way.plan, file, several, { last_day, book, signal });
    return way.way === "table" ? await asTable(sheet, way.layout, way.heading_line) : leftOut(sheet, "You said to leave it out.");
  } catch (error) {
    // A sheet of figures or pictures beside the jobs must not keep them out.
    if (error instanceof Unreadable && several) return leftOut(sheet, error.message);
    throw error;
  }
}

/** Dates up to a year from today are believed. */
export const dayAfterYear = (today: string): string => `${Number(today.slice(0, 4)) + 1}${today.slice(4)}`;

function writtenAs({ sheets: [sheet] }: OpenedFile): string | null {
  const text = sheet?.text;
  return text ? `separated by ${SEPARATORS[text.delimiter] ?? text.delimiter}, ${text.encoding === "windows-1252" ? "Windows-1252" : text.encoding.toUpperCase()}` : null;
}

/** True when answers given before say something of every sheet. */
const covers = (answers: Answers | null, sheets: readonly Sheet[]) => answers !== null && sheets.every(({ name }) => answersFor(answers, name, sheets.length === 1) !== null);

/**
 * Looks at a file before anything of it is read: what its sheets and columns are, what will be put right without asking, and
 * what only the owner can say.
 *
 * @throws {Unreadable} with one sentence for the owner, when it is no table or nothing tells what its columns are
 * @throws the signal's reason when cancelled
 */
export async function examine(file: NamedFile, options: ExamineOptions): Promise<FileUnderstanding> {
  const { signal, report, remembered } = options;
  const onBytes = (done: number) => report({ step: `Looking at ${file.name}`, done, total: file.blob.size });
  const opened = await openSheets(file, { signal, onBytes, isKnownHeading: knowsHeading(null) }), several = opened.sheets.length > 1, seen: Seen[] = [];
  for (const sheet of opened.sheets) seen.push(await seenSheet(sheet, file.name, several, options));
  return {
    file: file.name, kind: opened.kind, written_as: writtenAs(opened), shape_key: await shapeKey(opened.sheets),
    sheets: seen.map(({ understanding }) => understanding), questions: seen.flatMap(({ questions }) => questions),
    proposed: { version: 1, sheets: seen.map(({ answers }) => answers), ...(remembered?.notes ? { notes: remembered.notes } : {}) }, from_memory: covers(remembered, opened.sheets), remarks: opened.remarks,
  };
}
