import { execFile } from "node:child_process";
import { openAsBlob, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { promisify } from "node:util";
import Papa from "papaparse";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import type { FilesOfSize } from "./import-files.ts";

const DEMO = join(import.meta.dirname, "../../data/demo");
const TODAY = "2026-06-01";

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
 * Time to read, check, settle, keep and derive tickets and findings from files, in Node with a ledger in memory, by the app's own code.
 *
 * @param expected findings the files hold
 * @throws {Error} when not all of them came in
 */
export async function importTime(paths: readonly string[], expected: number): Promise<ImportTime> {
  const engine = await openNodeEngine();
  try {
    const files = await Promise.all(paths.map(async (path) => ({ name: basename(path), blob: await openAsBlob(path) })));
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const before = process.memoryUsage().rss, began = performance.now();
    const done = await importFiles(files, { engine, ledger: openMemoryLedger(), today: TODAY, origin: "files" });
    const milliseconds = performance.now() - began, findings = done.tables.find(({ table }) => table === "findings")?.rows ?? 0;
    if (findings !== expected) throw new Error(`Only ${findings} of ${expected} findings came in. ${done.files.map(({ file, unreadable }) => (unreadable === null ? "" : `${file}: ${unreadable}`)).join(" ")}`);
    return { findings, milliseconds, bytes: process.resourceUsage().maxRSS * 1024 - before };
  } finally {
    await engine.close();
  }
}

/** The same in a process of its own, so that `bytes` holds nothing of other work. */
export async function importTimeAlone({ paths, findings }: FilesOfSize): Promise<ImportTime> {
  const { stdout } = await promisify(execFile)(process.execPath, [join(import.meta.dirname, "../../src/commands/run-ts.mjs"), join(import.meta.dirname, "import-alone.ts"), String(findings), ...paths]);
  return JSON.parse(stdout.trim().split("\n").at(-1) ?? "") as ImportTime;
}
