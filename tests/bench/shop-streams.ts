import { mkdtempSync, openAsBlob, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { derive, prepareSchema, prepareTables } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";
import { grownFiles } from "./grown-files.ts";

/** The day questions are asked on: after the demo's newest ticket. */
export const TODAY = "2026-01-05";

/** A grown shop as the ledger keeps it: each table as a stream, ready for any engine. */
export interface ShopStreams { readonly findings: number; readonly tables: readonly { table: string; rows: number; stream: Uint8Array }[] }

/** Imports a grown shop once and takes its tables from the ledger. @throws {Error} when less came in than was given */
export async function shopStreams(enough: number): Promise<ShopStreams> {
  const home = mkdtempSync(join(tmpdir(), "saltbench-streams-")), engine = await openNodeEngine(), ledger = openMemoryLedger();
  try {
    const { paths, findings } = grownFiles(home, enough);
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const files = await Promise.all(paths.map(async (path) => ({ name: basename(path), blob: await openAsBlob(path) })));
    await importFiles(files, { engine, ledger, today: TODAY, origin: "files" });
    const [batch] = await ledger.batches(), kept = batch?.tables.find(({ table }) => table === "findings")?.rows ?? 0;
    if (!batch || kept !== findings) throw new Error(`Only ${kept} of ${findings} findings came in.`);
    return { findings, tables: await Promise.all(batch.tables.map(async ({ table, rows }) => ({ table, rows, stream: await ledger.payload(batch, table) }))) };
  } finally {
    await engine.close();
    rmSync(home, { recursive: true, force: true });
  }
}

/** Fills an engine with the shop, as a restart does. @returns milliseconds of loading and of deriving */
export async function fill(engine: Engine, { tables }: ShopStreams): Promise<{ loading: number; deriving: number }> {
  await prepareTables(engine);
  await loadVocabulary(engine);
  const began = performance.now();
  for (const { table, rows, stream } of tables) await engine.load(`ledger.${table}`, stream, rows, { import_no: 1 });
  return { loading: performance.now() - began, deriving: await derivingTime(engine) };
}

/** Milliseconds in which everything is derived from the rows that stand. */
export async function derivingTime(engine: Engine): Promise<number> {
  const began = performance.now();
  await derive(engine);
  await prepareAnswers(engine);
  return performance.now() - began;
}
