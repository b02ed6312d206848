import { execFile } from "node:child_process";
import { appendFileSync, mkdtempSync, openAsBlob, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import Papa from "papaparse";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import type { NamedFile } from "../../src/records/reading/read-file.ts";

const DEMO = join(import.meta.dirname, "../../data/demo");
const TODAY = "2026-06-01";

/** The demo's rows again and again, each round with ticket numbers and serials of its own, in a file so that they take no memory. */
async function grown(folder: string, file: string, own: readonly string[], rounds: number): Promise<NamedFile> {
  const { data, meta } = Papa.parse<Record<string, string>>(readFileSync(join(DEMO, file), "utf8"), { header: true, skipEmptyLines: true }), path = join(folder, file);
  for (let round = 0; round < rounds; round += 1) {
    const rows = data.map((row) => ({ ...row, ...Object.fromEntries(own.filter((name) => row[name]).map((name) => [name, `${row[name]}-${round}`])) }));
    appendFileSync(path, `${Papa.unparse(rows, { columns: meta.fields ?? [], header: round === 0 })}\r\n`);
  }
  return { name: file, blob: await openAsBlob(path) };
}

export interface SheetTime { rows: number; milliseconds: number }

/** The demo's own workshop sheet again and again, each round with job numbers of its own, cut at `rows` rows. */
function longSheet(rows: number): string {
  const { data: [headings = [], ...once] } = Papa.parse<string[]>(readFileSync(join(DEMO, "flat/workshop-sheet.csv"), "utf8"));
  const all = Array.from({ length: Math.ceil(rows / once.length) }, (_, round) => once.map(([job = "", ...rest]) => [round === 0 || job === "" ? job : `${job}-${round}`, ...rest])).flat();
  return Papa.unparse([headings, ...all.slice(0, rows)]);
}

/**
 * Time to understand, read, settle, keep and derive one sheet of jobs with headings of its own and notes in words, in Node with
 * a ledger in memory.
 *
 * @throws {Error} when fewer than nine in ten of its rows come in
 */
export async function sheetTime(rows: number): Promise<SheetTime> {
  const blob = new Blob([longSheet(rows)]), engine = await openNodeEngine();
  try {
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const began = performance.now();
    const { files: [file] } = await importFiles([{ name: "sheet.csv", blob }], { engine, ledger: openMemoryLedger(), today: TODAY, origin: "files" });
    const milliseconds = performance.now() - began;
    if (!file || file.rows_new < rows * 0.9) throw new Error(`Only ${file?.rows_new ?? 0} of ${rows} rows came in.`);
    return { rows: file.rows_read, milliseconds };
  } finally {
    await engine.close();
  }
}

/** `bytes`: how far the process grew at most, engine, packed import and all; only of a process of its own does it tell of the import alone. */
export interface ImportTime { findings: number; milliseconds: number; bytes: number }

/**
 * Time to read, check, settle, keep and derive the demo's tickets and findings, grown to at least `findings` findings, in
 * Node with a ledger in memory.
 *
 * @throws {Error} when rows were refused that the demo's import takes
 */
export async function importTime(findings: number): Promise<ImportTime> {
  const once = readFileSync(join(DEMO, "findings.csv"), "utf8").trim().split("\n").length - 1;
  const rounds = Math.ceil(findings / once);
  const folder = mkdtempSync(join(tmpdir(), "saltbench-"));
  const engine = await openNodeEngine();
  try {
    const files = [await grown(folder, "tickets.csv", ["ticket_no", "serial"], rounds), await grown(folder, "findings.csv", ["ticket_no"], rounds)];
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const before = process.memoryUsage().rss, began = performance.now();
    const done = await importFiles(files, { engine, ledger: openMemoryLedger(), today: TODAY, origin: "files" });
    const milliseconds = performance.now() - began;
    const kept = done.tables.find(({ table }) => table === "findings")?.rows ?? 0;
    if (kept < findings * 0.95) throw new Error(`Only ${kept} of ${once * rounds} findings came in.`);
    return { findings: kept, milliseconds, bytes: process.resourceUsage().maxRSS * 1024 - before };
  } finally {
    await engine.close();
    rmSync(folder, { recursive: true });
  }
}

/** The same in a process of its own, so that `bytes` holds nothing of other work. */
export async function importTimeAlone(findings: number): Promise<ImportTime> {
  const { stdout } = await promisify(execFile)(process.execPath, [join(import.meta.dirname, "../../src/commands/run-ts.mjs"), join(import.meta.dirname, "import-alone.ts"), String(findings)]);
  return JSON.parse(stdout.trim().split("\n").at(-1) ?? "") as ImportTime;
}
