import type { Engine, Report } from "../db/engine.ts";
import { clearImported } from "../db/prepare.ts";
import { ImportKept } from "./import-kept.ts";
import { lastDay } from "./last-day.ts";
import { RealRecords } from "./ledger/errors.ts";
import { LEDGER_VERSION } from "./ledger/ledger.ts";
import type { Batch, Ledger, Reject } from "./ledger/ledger.ts";
import { withoutImport } from "./ledger/without-import.ts";
import { putTogether } from "./merging/put-together.ts";
import { mappingFrom } from "./reading/mapping.ts";
import type { Mapping } from "./reading/mapping.ts";
import type { StagedRows } from "./reading/filling.ts";
import { nowPutRight, putRightKeys, withoutPutRight } from "./put-right.ts";
import type { FileRead, NamedFile, ReadFile } from "./reading/read-file.ts";
import { Unreadable } from "./formats/unreadable.ts";
import { isInStep, noteImports, rebuild } from "./rebuild.ts";
import { reelListsFirst } from "./reel-lists-first.ts";
import { incoming } from "./returned-rows.ts";
import { leaveWaitingRoom, moveLines, openWaitingRoom, settle, voidRows } from "./settling/settle.ts";
import type { Settled } from "./settling/settle.ts";
import type { Answers } from "./understanding/answers.ts";
import { modelsKnown, ownerSalt, whatIsKnown } from "./understanding/what-is-known.ts";

export interface ImportOptions {
  /** Filled with all that the ledger holds. */
  readonly engine: Engine;
  readonly ledger: Ledger;
  /** `YYYY-MM-DD`; dates up to a year from it are believed. */
  readonly today: string;
  readonly origin: Batch["origin"];
  readonly signal?: AbortSignal;
  readonly report?: Report;
  /** What the owner settled for files, by their names; a file without is read by what was answered for its shape before. */
  readonly answers?: ReadonlyMap<string, Answers>;
  /** Where files are read; here unless said otherwise, in the browser `readInWorker`. */
  readonly read?: ReadFile;
  /** Id of an import whose place this one takes when it is written; it stays until then. When it fails, the engine has to be filled from the ledger. */
  readonly instead_of?: string;
  /** The import takes the place of all records and settings; `beside` puts where rows came from beside those that wait. When it fails, the engine has to be filled from the ledger. */
  readonly instead_of_all?: { readonly settings: Readonly<Record<string, string>>; readonly rejects: readonly Reject[]; readonly beside?: (engine: Engine) => Promise<void> };
}

/** What became of an import. When it brought nothing new nothing is kept: `id` is empty and `import_no` 0. */
export interface Imported extends Batch {
  readonly kept: boolean;
  readonly rejects: readonly Reject[];
}

const MAPPING = "mapping.json";
const folder = (name: string) => name.slice(0, name.lastIndexOf("/") + 1);
const isMapping = ({ name }: NamedFile) => name.slice(folder(name).length) === MAPPING;

const busy = new WeakSet<Engine>();

/** Mappings by folder; one that is wrong makes the files beside it unreadable, because without it they mean something else. */
async function mappingsOf(files: readonly NamedFile[]): Promise<ReadonlyMap<string, Mapping | Unreadable>> {
  const found = new Map<string, Mapping | Unreadable>();
  for (const file of files.filter(isMapping)) {
    try {
      found.set(folder(file.name), mappingFrom(await file.blob.text()));
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      found.set(folder(file.name), error);
    }
  }
  return found;
}

function notRead(file: NamedFile, unreadable: string): FileRead {
  return { file: file.name, bytes: file.blob.size, sha256: "", tables: [], rows_read: 0, rows_known: 0, rows_to_fix: 0, rows_dropped: 0, unreadable, remarks: [], rejects: [] };
}

/** Takes rows in while the next ones are read: one piece is on its way at a time, so that memory stays bounded. */
function loading(engine: Engine): { take: (rows: StagedRows) => Promise<void>; ended: () => Promise<void> } {
  let under_way: Promise<void> = Promise.resolve();
  const take = async ({ table, stream, rows }: StagedRows) => {
    await under_way;
    under_way = engine.load(`staging.${table}`, stream, rows);
    // Whoever takes the next rows, or the end, hears of a failure; until then nobody listens.
    under_way.catch(() => undefined);
  };
  return { take, ended: () => under_way };
}

/** What was read of a file; `lines` are those of the rows that came back put right, null for a file as it was given. */
interface Read {
  readonly read: FileRead;
  readonly lines: ReadonlySet<number> | null;
}

/** Reads all files into the waiting room, one after the other. */
async function readAll(files: readonly NamedFile[], options: ImportOptions, signal: AbortSignal): Promise<Read[]> {
  const { engine, ledger, report = () => undefined } = options;
  // Reading is large, and mostly done elsewhere.
  const read = options.read ?? (await import("./read-here.ts")).readHere;
  const mappings = await mappingsOf(files), reads: Read[] = [], right = await putRightKeys(ledger), known = await whatIsKnown(ledger);
  const told = [...mappings.values()].map((one) => (one instanceof Unreadable ? null : one.answers));
  const owner_salt = await ownerSalt(ledger, [...told, ...known.remembered.map(({ answers }) => answers), ...(options.answers?.values() ?? [])]);
  const given = await incoming(files.filter((one) => !isMapping(one)), () => ledger.rejects(), signal);
  // What a backup says of its files goes by their order.
  for (const { file, lines } of options.instead_of_all ? given : await reelListsFirst(given, signal)) {
    signal.throwIfAborted();
    const mapping = mappings.get(folder(file.name)) ?? null, file_no = reads.length + 1;
    if (mapping instanceof Unreadable) {
      reads.push({ read: notRead(file, mapping.message), lines: null });
      continue;
    }
    const load = loading(engine), answers = options.answers?.get(file.name) ?? null, models = await modelsKnown(engine);
    const done = await read(file, { ...known, owner_salt, answers, models, file_no, mapping, signal, report, last_day: lastDay(options.today), take: load.take });
    await load.ended();
    for (const [at, { unreadable }] of done.entries()) if (unreadable !== null) await voidRows(engine, file_no + at);
    if (lines) await moveLines(engine, file_no, lines);
    const there = (one: FileRead): FileRead => (lines ? { ...one, rejects: one.rejects.map((reject) => ({ ...reject, line: lines.get(reject.line) ?? reject.line })) } : one);
    for (const one of done) reads.push({ read: lines ? there(one) : await withoutPutRight(one, right), lines: lines && new Set(lines.values()) });
  }
  return reads;
}

/** Of files whose rows came back in a list, rows that did not come back are still to fix, and those put right are remembered. */
async function withReturned(found: Settled, reads: readonly Read[], ledger: Ledger): Promise<Settled> {
  if (reads.every(({ lines }) => lines === null)) return found;
  const before = await ledger.rejects(), files = [...found.files], rejects = [...found.rejects];
  for (const [at, { lines }] of reads.entries()) {
    const tally = files[at];
    if (!lines || !tally) continue;
    const own = before.filter(({ file }) => file === tally.file), put_right = await nowPutRight(own, lines, found.rejects.filter(({ file }) => file === tally.file));
    files[at] = { ...tally, put_right: put_right ?? [] };
    rejects.push(...own.filter(({ line }) => !lines.has(line)));
  }
  return { ...found, files, rejects };
}

/** Rows to fix, for comparing two imports of one file. */
const asText = (rejects: readonly Reject[]) => rejects.map((one) => JSON.stringify([one.file, one.line, one.column, one.value, one.reason])).sort().join("\n");

/** The list of rows to fix of these files would change. */
async function changesRejects(ledger: Ledger, { files, rejects }: Settled): Promise<boolean> {
  const names = new Set([...files.filter(({ unreadable }) => unreadable === null).map(({ file }) => file), ...rejects.map(({ file }) => file)]);
  const before = (await ledger.rejects()).filter(({ file }) => names.has(file));
  return asText(before) !== asText(rejects);
}

/**
 * Brings what is written to the engine, in two transactions: inside one, the engine keeps a second copy of what it was sent until the end,
 * and deriving needs that room. Until the import is noted the engine counts as out of step, so that half done is done again, never believed.
 */
async function show(batch: Batch, waiting: Settled["payloads"][number][], { engine, ledger }: ImportOptions): Promise<void> {
  try {
    await engine.transaction(async (inside) => {
      for (let next = waiting.shift(); next; next = waiting.shift()) await inside.load(`ledger.${next.table}`, next.stream, next.rows, { import_no: batch.import_no });
    });
    await engine.transaction(async (inside) => {
      await noteImports(inside, [batch]);
      await putTogether(inside, ledger);
    });
  } catch (cause) {
    throw new ImportKept(batch, { cause });
  }
}

/** What an import was before it is written, and what it is after. */
interface Written {
  readonly settled: Settled;
  /** Null when there was nothing to write. */
  readonly batch: Batch | null;
}

/**
 * The ledger that rows go into: own records put a demo out that another window opened meanwhile.
 *
 * @throws {RealRecords} when the demo would come in beside own records
 */
async function apart(ledger: Ledger, { origin, instead_of_all }: ImportOptions): Promise<Ledger> {
  if (instead_of_all) return ledger;
  const batches = await ledger.batches(), demo = batches.find((batch) => batch.origin === "demo");
  if (origin === "demo" && batches.some((batch) => batch.origin !== "demo")) throw new RealRecords();
  return demo && origin !== "demo" ? withoutImport(ledger, demo.id) : ledger;
}

/** Compares the waiting rows with all that is kept, and writes what is new. No other tab adds anything meanwhile. */
async function written(reads: readonly Read[], options: ImportOptions, signal: AbortSignal): Promise<Written> {
  const { engine, origin, instead_of_all, report = () => undefined } = options, ledger = await apart(options.ledger, options);
  report({ step: "Comparing with your records", done: 0, total: null });
  if (instead_of_all) {
    await instead_of_all.beside?.(engine);
    await clearImported(engine);
  }
  if (!instead_of_all && !(await isInStep(engine, ledger))) await rebuild(engine, ledger, { report, signal });
  const found = await withReturned(await settle(engine, reads.map(({ read }) => read), signal, instead_of_all?.beside !== undefined), reads, ledger);
  // What waited takes as much room as what is kept, and deriving needs it.
  await leaveWaitingRoom(engine);
  const settled = { ...found, rejects: [...found.rejects, ...(instead_of_all?.rejects ?? [])] };
  const replaces = instead_of_all !== undefined || options.instead_of !== undefined;
  if (!replaces && settled.payloads.length === 0 && !(await changesRejects(ledger, settled))) {
    // A demo that was to go out stays.
    if (ledger !== options.ledger) await rebuild(engine, options.ledger, { report, signal });
    return { settled, batch: null };
  }
  signal.throwIfAborted();
  report({ step: "Keeping your records", done: 0, total: null });
  const whole = { ...settled, origin, imported_at: new Date().toISOString() };
  return { settled, batch: await (instead_of_all ? ledger.replaceAll(whole, instead_of_all.settings) : ledger.append(whole)) };
}

async function imported(files: readonly NamedFile[], options: ImportOptions): Promise<Imported> {
  const { engine, ledger, origin, signal = new AbortController().signal } = options;
  await openWaitingRoom(engine);
  const reads = await readAll(files, options, signal);
  const { settled: { payloads, files: tallies, rejects }, batch } = await ledger.alone(() => written(reads, options, signal));
  if (!batch) return { id: "", import_no: 0, imported_at: new Date().toISOString(), origin, ledger_version: LEDGER_VERSION, files: tallies, tables: [], kept: false, rejects };
  // Taken out of the list, the streams are let go as soon as the engine has them.
  await show(batch, payloads.splice(0), options);
  return { ...batch, kept: true, rejects };
}

/**
 * Takes files in, whole or not at all: every row ends in the records, in the list of rows to fix, or in a counted drop.
 *
 * The order of the files does not matter. A `mapping.json` is applied to the files of its folder. Until the ledger has
 * written the import, a cancel, a failure or a killed tab leaves everything as it was.
 *
 * @throws the signal's reason when cancelled; what {@link Ledger.append} throws
 * @throws {ImportKept} when the import is written, and the engine failed after that
 * @throws {RangeError} when another import into the same engine is under way
 */
export async function importFiles(files: readonly NamedFile[], options: ImportOptions): Promise<Imported> {
  const { engine, ledger, instead_of } = options;
  if (busy.has(engine)) throw new RangeError("importFiles: needs the import before it to have ended");
  busy.add(engine);
  try {
    return await imported(files, instead_of === undefined ? options : { ...options, ledger: withoutImport(ledger, instead_of) });
  } finally {
    busy.delete(engine);
    await leaveWaitingRoom(engine);
  }
}
