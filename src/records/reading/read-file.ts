import type { Report } from "../../db/engine.ts";
import type { TableName } from "../columns.ts";
import { openSheets } from "../formats/open-sheets.ts";
import type { NamedFile, OpenedFile, Sheet, SheetRow } from "../formats/sheet.ts";
import { Unreadable } from "../formats/unreadable.ts";
import type { FileTally, Reject } from "../ledger/ledger.ts";
import { withReadings } from "../notes/own-spellings.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import type { Answers } from "../understanding/answers.ts";
import type { NotesRead } from "../understanding/row-findings.ts";
import { TITLE } from "../understanding/row-shapes.ts";
import type { SheetPlan } from "../understanding/sheet-plan.ts";
import type { KnownModel } from "../understanding/understanding.ts";
import type { StagedRows } from "./filling.ts";
import { kindOfSheet, listsFirst, withList } from "./list-of-reels.ts";
import type { Mapping } from "./mapping.ts";
import { BLANK, layoutRemarks } from "./remarks.ts";
import { RowTaker } from "./row-taker.ts";
import { knowsHeading, sheetWay } from "./sheet-way.ts";
import type { SheetWay } from "./sheet-way.ts";

export type { NamedFile } from "../formats/sheet.ts";

export interface ReadOptions {
  /** Number of the file within its import, from 1; each further sheet of a workbook takes the next. */
  readonly file_no: number;
  readonly mapping: Mapping | null;
  /** What the owner settled for this file; null or absent: each sheet is read by its best understanding. */
  readonly answers?: Answers | null;
  /** Answers given for files of other shapes and this one, by `shapeKey`. */
  readonly remembered?: readonly { readonly shape: string; readonly answers: Answers }[];
  /** The shop's own list of reels. */
  readonly models?: readonly KnownModel[];
  readonly book?: SpellingBook | null;
  /** The shop's own, for tags that stand for owners; null or absent: none are made. */
  readonly owner_salt?: string | null;
  /** Newest day a date may name, `YYYY-MM-DD`. */
  readonly last_day: string;
  readonly signal: AbortSignal;
  readonly report: Report;
  /** Takes the rows that passed; the next ones are read when it has. */
  readonly take: (rows: StagedRows) => Promise<void>;
}

/** What reading made of a file; which rows are new is settled later, `rows_known` only repeat a ticket of the same file. */
export interface FileRead extends Omit<FileTally, "rows_new"> {
  readonly rejects: readonly Reject[];
}

/** Reads one file, here or in a worker: what became of each of its sheets, in their order; one for a file that cannot be read. */
export type ReadFile = (file: NamedFile, options: ReadOptions) => Promise<readonly FileRead[]>;

async function sha256(blob: Blob): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await blob.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** What the browser says when a file was moved, changed or is a folder. */
const GONE = new Set(["NotReadableError", "NotFoundError", "SecurityError"]);

function sentenceOf(error: unknown): string | null {
  if (error instanceof Unreadable) return error.message;
  if (error instanceof Error && GONE.has(error.name)) return "The file could not be opened; was it moved, changed or is it a folder?";
  return null;
}

/** One of the two ways rows are taken; both count the same ends. */
interface Taker {
  prepare?(rows: readonly SheetRow[]): Promise<void>;
  take(row: SheetRow): unknown;
  finish(): unknown;
  staged(at_end: boolean): StagedRows[];
  readonly rows_read: number;
  readonly rows_known: number;
  readonly rows_to_fix: number;
  readonly rows_dropped: number;
  readonly rejects: readonly Reject[];
}

interface Way {
  readonly taker: Taker;
  readonly heading_line: number | null;
  readonly above: (row: SheetRow) => void;
  readonly tables: () => TableName[];
  readonly remarks: () => string[];
}

function asTable(file: { name: string; file_no: number }, { layout }: SheetWay & { way: "table" }, { last_day, mapping }: ReadOptions, heading_line: number): Way {
  const taker = new RowTaker(file, layout, last_day);
  return {
    taker, heading_line, above: (row) => taker.take({ ...row, cells: [""], lines: 1, stray_quote: false }), tables: () => layout.plans.map(({ table }) => table.name),
    remarks: () => [...layoutRemarks(layout, mapping), ...taker.counts.sentences()],
  };
}

async function asUnderstood(file: { name: string; file_no: number }, way: SheetWay & { way: "understood" }, { last_day, book, answers, owner_salt, signal }: ReadOptions): Promise<Way> {
  const { rowMaker, SheetTaker, understoodRemarks, withRoutineParts } = await import("./understood-way.ts");
  const own = withReadings(book ?? null, answers?.notes ?? []), notes_read: NotesRead = new Map();
  const makerOf = (one: SheetPlan) => rowMaker(one, file.name, last_day, own, owner_salt ?? null, notes_read);
  const plan = way.plan.answers?.routine_parts ? way.plan : await withRoutineParts(way.plan, makerOf, signal);
  const taker = new SheetTaker(file, plan, makerOf(plan), last_day);
  return {
    taker, heading_line: plan.start.heading_line, above: ({ cells }) => taker.passOver(cells.some((cell) => cell.trim() !== "") ? TITLE : BLANK), tables: () => taker.tables,
    remarks: () => [...understoodRemarks(plan, file.name), ...taker.remarks()],
  };
}

/** Reads all rows of a sheet. */
async function rowsOf(sheet: Sheet, { taker, heading_line, above }: Way, options: ReadOptions, onRows: (read: number) => void): Promise<void> {
  for await (const rows of sheet.rows()) {
    options.signal.throwIfAborted();
    await taker.prepare?.(rows);
    for (const row of rows) {
      if (heading_line === null || row.line > heading_line) taker.take(row);
      else if (row.line < heading_line) above(row);
    }
    onRows(taker.rows_read);
    for (const staged of taker.staged(false)) await options.take(staged);
  }
  taker.finish();
  for (const staged of taker.staged(true)) await options.take(staged);
}

interface Reading { readonly file: NamedFile; readonly opened: OpenedFile; readonly options: ReadOptions; readonly progress: { rows: number } }

async function readSheet(sheet: Sheet, name: string, file_no: number, { file, opened, options, progress }: Reading): Promise<Omit<FileRead, "sha256"> | null> {
  const tally = { file: name, bytes: file.blob.size };
  try {
    const { mapping, answers = null, models = [], last_day, signal } = options, only = opened.sheets.length === 1;
    const way = await sheetWay(sheet, { file: file.name, mapping, answers, models, last_day, signal, only });
    if (way.way === "left out") return null;
    const whole = { ...options, file_no }, at = { name, file_no };
    const how = way.way === "table" ? asTable(at, way, whole, way.heading_line) : await asUnderstood(at, way, whole);
    const before = progress.rows;
    await rowsOf(sheet, how, whole, (read) => { progress.rows = before + read; });
    const { rows_read, rows_known, rows_to_fix, rows_dropped, rejects } = how.taker;
    const remarks = [...opened.remarks, ...encodingRemark(sheet), ...sheet.remarks, ...how.remarks(), ...(rows_read === 0 ? ["The file holds headings and no rows."] : [])];
    return { ...tally, tables: how.tables(), rows_read, rows_known, rows_to_fix, rows_dropped, unreadable: null, remarks, rejects };
  } catch (error) {
    const unreadable = sentenceOf(error);
    if (unreadable === null) throw error;
    return { ...tally, ...notRead(unreadable) };
  }
}

const encodingRemark = ({ text }: Sheet) => (text?.encoding === "windows-1252" ? ["Read as Windows-1252, because the text is not valid UTF-8."] : []);
const notRead = (unreadable: string) => ({ tables: [], rows_read: 0, rows_known: 0, rows_to_fix: 0, rows_dropped: 0, unreadable, remarks: [], rejects: [] });

async function readSheets(reading: Reading): Promise<FileRead[]> {
  const { file, opened: { sheets }, options } = reading, reads: FileRead[] = [], digest = await sha256(file.blob), only = sheets.length === 1;
  const kinds = only ? [] : await Promise.all(sheets.map((sheet) => kindOfSheet(sheet, file.name)));
  // A workbook's own list of reels counts for its other sheets as it will when the workbook comes again.
  let { models = [] } = options;
  const take = async (staged: StagedRows) => {
    if (!only && staged.table === "models") models = withList(models, staged.stream);
    await options.take(staged);
  };
  for (const sheet of listsFirst(sheets, kinds)) {
    const name = only ? file.name : `${file.name} › ${sheet.name ?? ""}`;
    const read = await readSheet(sheet, name, options.file_no + reads.length, { ...reading, options: { ...options, models, take } });
    if (read) reads.push({ ...read, sha256: read.unreadable === null ? digest : "" });
  }
  return reads;
}

/** What is settled for a file: by the owner now, by its `mapping.json`, or for a file of its shape before. */
async function withAnswers({ sheets }: OpenedFile, options: ReadOptions): Promise<ReadOptions> {
  const { answers = null, mapping, remembered = [] } = options, own = answers ?? mapping?.answers ?? null;
  if (own) return { ...options, answers: own, mapping: mapping?.answers ? null : mapping };
  if (mapping !== null || remembered.length === 0) return options;
  const { shapeKey } = await import("./understood-way.ts"), shape = await shapeKey(sheets);
  return { ...options, answers: remembered.find((one) => one.shape === shape)?.answers ?? null };
}

/**
 * Reads one file: names what it is, opens its sheets, finds out what their columns mean, and checks it row by row.
 *
 * @returns the tallies; one that cannot be read has the reason in `unreadable`, and what was given to `take` of it is void
 * @throws the signal's reason when cancelled
 */
export const readFile: ReadFile = async (file, options) => {
  const progress = { rows: 0 }, onBytes = (done: number) => options.report({ step: `Reading ${file.name}`, done, total: file.blob.size, rows: progress.rows });
  try {
    const opened = await openSheets(file, { signal: options.signal, onBytes, isKnownHeading: knowsHeading(options.mapping) });
    return await readSheets({ file, opened, options: await withAnswers(opened, options), progress });
  } catch (error) {
    const unreadable = sentenceOf(error);
    if (unreadable === null) throw error;
    return [{ file: file.name, bytes: file.blob.size, sha256: "", ...notRead(unreadable) }];
  }
};
