import { readFileSync } from "node:fs";
import { tableFromIPC } from "apache-arrow";
import type { StagedRows } from "../../../src/records/reading/filling.ts";
import { readFile } from "../../../src/records/reading/read-file.ts";
import type { FileRead, ReadOptions } from "../../../src/records/reading/read-file.ts";
import type { Answers } from "../../../src/records/understanding/answers.ts";
import { examine } from "../../../src/records/understanding/examine.ts";
import { answered } from "../../../src/records/understanding/questions.ts";
import type { ExamineOptions, FileUnderstanding, KnownModel } from "../../../src/records/understanding/understanding.ts";

export const fixture = (name: string) => ({ name, blob: new Blob([readFileSync(new URL(`shapes/${name}`, import.meta.url))]) });
export const sheetOf = (text: string, name = "sheet.csv") => ({ name, blob: new Blob([text]) });

/** The invented shop's own list, as far as the fixtures need it. */
export const MODELS: readonly KnownModel[] = [
  { maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning" }, { maker: "Wexmoor", model: "Slipdene 45", reel_kind: "spinning" },
  { maker: "Ostvarg", model: "Ekholt 30", reel_kind: "spinning" }, { maker: "Uffenby", model: "Dunvegg 20", reel_kind: "conventional" },
  { maker: "Wexmoor", model: "Piddock 150", reel_kind: "baitcaster" }, { maker: "Eldmere", model: "Withy 5", reel_kind: "fly" },
  { maker: "Eldmere", model: "Fernhowe 7", reel_kind: "fly" }, { maker: "Uffenby", model: "Bruskar 80", reel_kind: "spinning" },
];

export const asked = (more: Partial<ExamineOptions> = {}): ExamineOptions =>
  ({ remembered: null, today: "2025-12-31", models: MODELS, signal: new AbortController().signal, report: () => undefined, ...more });

export type Rows = Record<string, Record<string, unknown>[]>;
const ORIGIN = new Set(["file_no", "source_file", "row_key", "came_in_guessed"]);
const plain = (row: Record<string, unknown>) => Object.fromEntries(Object.entries(row)
  .filter(([name, value]) => value !== null && !ORIGIN.has(name))
  .map(([name, value]) => [name, name.endsWith("_on") ? new Date(Number(value)).toISOString().slice(0, 10) : value]));

/** Reads a file as an import would: what passed, by table, and what became of the rows. */
export async function readShape(file: { name: string; blob: Blob }, more: Partial<ReadOptions> = {}): Promise<{ rows: Rows; reads: readonly FileRead[]; keys: string[] }> {
  const rows: Rows = {}, keys: string[] = [];
  const take = async ({ table, stream }: StagedRows) => {
    for (const row of tableFromIPC(stream).toArray().map((one) => one.toJSON() as Record<string, unknown>)) {
      keys.push(`${table} ${String(row["row_key"])}`);
      (rows[table] ??= []).push(plain(row));
    }
  };
  const reads = await readFile(file, { file_no: 1, mapping: null, models: MODELS, last_day: "2026-12-31", signal: new AbortController().signal, report: () => undefined, take, ...more });
  return { rows, reads, keys };
}

/** read = in + known + to fix + dropped: the lines that gave a record are in. */
export function ends({ rows, reads }: { rows: Rows; reads: readonly FileRead[] }) {
  const [read] = reads, lines = new Set(Object.values(rows).flat().map((row) => row["source_line"]));
  return { read: read?.rows_read, in: lines.size, known: read?.rows_known, to_fix: read?.rows_to_fix, dropped: read?.rows_dropped };
}

export const fixes = ([read]: readonly FileRead[]) => (read?.rejects ?? []).map(({ line, column, value, reason }) => [line, column, value, reason]);
/** Ticket, place, what was done, pieces, size. */
export const findings = (rows: Rows) => (rows["findings"] ?? []).map((row) => [row["ticket_no"], row["position"], row["action"] ?? null, row["qty"] ?? null, row["size"] ?? null]);

/** Examines a file and answers its questions: by their ids' middle word (`dates`, `year` …), or with the best. */
export async function understood(file: { name: string; blob: Blob }, given: Record<string, string> = {}, more: Partial<ExamineOptions> = {}): Promise<FileUnderstanding & { answers: Answers }> {
  const seen = await examine(file, asked(more));
  const answers = seen.questions.reduce((all, question) => {
    const value = given[question.about] ?? question.best;
    return value === null ? all : answered(all, question, value);
  }, seen.proposed);
  return { ...seen, answers };
}
