import type { Engine, Row } from "../../src/db/engine.ts";
import { clearImported, derive } from "../../src/db/prepare.ts";
import { TABLES } from "../../src/records/columns.ts";
import { importFiles } from "../../src/records/importing.ts";
import type { ImportOptions, Imported } from "../../src/records/importing.ts";
import type { FileTally, Ledger } from "../../src/records/ledger/ledger.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { rebuild } from "../../src/records/rebuild.ts";
import { openEngine } from "../db/open.ts";

export interface Bench {
  readonly engine: Engine;
  readonly ledger: Ledger;
  bringIn(files: Record<string, BlobPart>, more?: Partial<ImportOptions>): Promise<Imported>;
  /** Takes one import back, as the app does. */
  takeOut(id: string): Promise<void>;
  /** All imported rows, without where they came from, by table. */
  records(): Promise<Record<string, Row[]>>;
}

/** A bench without records; the engine of the test file is emptied, the ledger is another. */
export async function openBench(ledger = openMemoryLedger()): Promise<Bench> {
  const engine = await openEngine();
  await loadVocabulary(engine);
  return {
    engine,
    ledger,
    bringIn: (files, more = {}) => {
      const named = Object.entries(files).map(([name, content]) => ({ name, blob: content instanceof Blob ? content : new Blob([content]) }));
      return importFiles(named, { engine, ledger, today: "2026-06-01", origin: "files", ...more });
    },
    takeOut: async (id) => {
      await ledger.remove(id);
      await rebuild(engine, ledger);
    },
    records: () => recordsOf(engine),
  };
}

/** Empties the engine and the ledger, faster than opening another. */
export async function emptied({ engine, ledger }: Bench): Promise<void> {
  await clearImported(engine);
  await derive(engine);
  await ledger.clear();
}

async function recordsOf(engine: Engine): Promise<Record<string, Row[]>> {
  const found: Record<string, Row[]> = {};
  for (const { name, columns } of TABLES) {
    const names = columns.map((column) => column.name).join(", ");
    found[name] = await engine.rows(`select ${names} from ledger.${name} order by ${names}`);
  }
  return found;
}

export const tallyOf = ({ files }: Imported, name: string): Partial<FileTally> => files.find(({ file }) => file === name) ?? {};
/** `read = new + known + to fix + dropped`, in this order. */
export const counts = (imported: Imported, name: string) => {
  const { rows_read, rows_new, rows_known, rows_to_fix, rows_dropped } = tallyOf(imported, name);
  return [rows_read, rows_new, rows_known, rows_to_fix, rows_dropped];
};
export const reasons = ({ rejects }: Pick<Imported, "rejects">) => rejects.map(({ file, line, reason }) => `${file} ${line}: ${reason}`);
