import type { Engine, SqlValue } from "../db/engine.ts";
import { benchCopy, benchFiles, isBenchFile } from "./backup/bench-files.ts";
import { TABLE_FILES, keptRows } from "./backup/kept-rows.ts";
import { BackupRefused, MANIFEST, checkEntries, entryOf, manifestFrom, manifestText } from "./backup/manifest.ts";
import { SOURCES, SOURCE_COLUMNS, bringSources } from "./backup/sources.ts";
import { unzipped, zipped } from "./backup/zip.ts";
import type { BenchStore } from "./bench-log/bench-store.ts";
import type { TableName } from "./columns.ts";
import { csvLine, csvText } from "./csv-out.ts";
import { importFiles } from "./importing.ts";
import type { ImportOptions, Imported } from "./importing.ts";
import type { Ledger } from "./ledger/ledger.ts";
import { PUT_RIGHT, putRightKeys } from "./put-right.ts";
import { rebuild } from "./rebuild.ts";
import { rowsToFixCsv, rowsToFixFrom } from "./rows-to-fix.ts";

const REJECTS = "rows-to-fix.csv", SETTINGS = "settings.json";
/** What every backup holds; one made before where rows came from was kept lacks that. */
const NAMES = new Set([...TABLE_FILES.map(({ name }) => name), REJECTS, SETTINGS, MANIFEST]);

const bytesOf = (text: string) => new TextEncoder().encode(text);
const textOf = (files: ReadonlyMap<string, Uint8Array>, name: string) => new TextDecoder().decode(files.get(name));

const LINE_ENDS = /\n/g;

/** One table as CSV, and a line for each of its rows that says where it came from. */
async function tableCsv(engine: Engine, table: TableName): Promise<{ text: string; sources: string }> {
  const { sql, columns } = keptRows(table), found = await engine.columns(sql), at = (name: string, row: number): SqlValue => found[name]?.[row] ?? null;
  const length = found[columns[0] ?? ""]?.length ?? 0;
  const texts: string[] = [], sources: string[] = [];
  for (let row = 0, line = 2; row < length; row += 1) {
    const text = csvLine(columns.map((name) => at(name, row)));
    texts.push(text);
    sources.push(csvLine([table, line, at("source_file", row), at("source_line", row), at("of_version", row), at("row_key", row)]));
    line += text.match(LINE_ENDS)?.length ?? 0;
  }
  return { text: csvText(columns, []) + texts.join(""), sources: sources.join("") };
}

/** Settings to keep, with the rows that were put right: their imports become one. */
async function settingsOf(ledger: Ledger): Promise<Record<string, string>> {
  const right = [...(await putRightKeys(ledger))].sort().join(" ");
  return { ...(await ledger.settings()), ...(right === "" ? {} : { [PUT_RIGHT]: right }) };
}

/** Settings by name, so that equal settings give equal bytes. */
function settingsText(settings: Readonly<Record<string, string>>): string {
  return `${JSON.stringify(Object.fromEntries(Object.entries(settings).sort(([a], [b]) => (a < b ? -1 : 1))), null, 2)}\n`;
}

interface BackUpFrom { readonly engine: Engine; readonly ledger: Ledger; readonly today: string; readonly bench?: BenchStore }

/**
 * All records, rows to fix and settings as one zip file of CSV tables that ordinary tools open; tickets at the bench and
 * their photos beside them.
 *
 * @param from `today` as `YYYY-MM-DD`; the engine filled with all that the ledger holds
 */
export async function backUp({ engine, ledger, today, bench }: BackUpFrom): Promise<Blob> {
  const files = new Map<string, Uint8Array>();
  let origins = csvText(SOURCE_COLUMNS, []);
  for (const { table, name } of TABLE_FILES) {
    const { text, sources } = await tableCsv(engine, table);
    files.set(name, bytesOf(text));
    origins += sources;
  }
  files.set(SOURCES, bytesOf(origins));
  files.set(REJECTS, bytesOf(rowsToFixCsv(await ledger.rejects())));
  files.set(SETTINGS, bytesOf(settingsText(await settingsOf(ledger))));
  const at_bench = bench ? await benchFiles(bench) : new Map<string, Uint8Array>();
  for (const [name, bytes] of at_bench) files.set(name, bytes);
  const entries = await Promise.all([...files].map(([name, bytes]) => entryOf(name, bytes)));
  files.set(MANIFEST, bytesOf(manifestText(today, entries, at_bench.size > 0)));
  return new Blob([zipped(files, today)], { type: "application/zip" });
}

function settingsFrom(text: string): Record<string, string> {
  const json: unknown = JSON.parse(text);
  const entries = typeof json === "object" && json !== null ? Object.entries(json) : [];
  return Object.fromEntries(entries.filter((entry): entry is [string, string] => typeof entry[1] === "string"));
}

/**
 * The files of a backup, each held against its checksum.
 *
 * @throws {BackupRefused} when the file is no backup, a newer one, or damaged
 */
export async function backupFiles(file: Blob): Promise<ReadonlyMap<string, Uint8Array>> {
  const files = unzipped(new Uint8Array(await file.arrayBuffer()), (name) => NAMES.has(name) || name === SOURCES || isBenchFile(name));
  if (!files.has(MANIFEST)) throw new BackupRefused("This zip file is not a backup of Saltbench: it has no manifest.json.");
  const manifest = manifestFrom(textOf(files, MANIFEST)), listed = new Set(manifest.entries.map(({ name }) => name));
  const missing = [...NAMES].find((name) => name !== MANIFEST && !listed.has(name));
  if (missing !== undefined) throw new BackupRefused(`This backup is damaged: its manifest.json does not list ${missing}.`);
  await checkEntries(manifest, files);
  return files;
}

/**
 * Puts a backup in the place of all records and settings, through the same checks as any file, whole or not at all. What is
 * at the bench gives way to the backup's bench log; where the backup has none it stays.
 *
 * @throws {BackupRefused} when the file is no backup, was made by a newer version, or is damaged (it says where); nothing has
 * changed then
 */
export async function restore(file: Blob, options: Omit<ImportOptions, "origin" | "instead_of_all"> & { readonly bench?: BenchStore }): Promise<Imported> {
  const files = await backupFiles(file), { engine, ledger } = options, at_bench = benchCopy(files);
  const tables = TABLE_FILES.map(({ name }) => ({ name, blob: new Blob([(files.get(name) ?? new Uint8Array()) as Uint8Array<ArrayBuffer>]) }));
  const beside = files.has(SOURCES) ? { beside: (inside: Engine) => bringSources(inside, textOf(files, SOURCES)) } : {};
  const instead_of_all = { settings: settingsFrom(textOf(files, SETTINGS)), rejects: await rowsToFixFrom(textOf(files, REJECTS)), ...beside };
  try {
    const imported = await importFiles(tables, { ...options, origin: "backup", instead_of_all });
    if (at_bench) await options.bench?.replaceAll(at_bench);
    return imported;
  } catch (error) {
    // The engine was emptied for the backup's rows.
    await rebuild(engine, ledger);
    throw error;
  }
}
