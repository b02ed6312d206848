import { openAsBlob } from "node:fs";
import { readdir } from "node:fs/promises";
import { join, resolve } from "node:path";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

export const DEMO = resolve(import.meta.dirname, "../../data/demo");

/** The demo shop's seven tables in the real engine, through the real importer. */
export async function openDemo(): Promise<Engine> {
  const engine = await openNodeEngine();
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const names = (await readdir(DEMO)).filter((name) => /\.csv(\.gz)?$/.test(name)).sort();
  const files = await Promise.all(names.map(async (name) => ({ name, blob: await openAsBlob(join(DEMO, name)) })));
  await importFiles(files, { engine, ledger: openMemoryLedger(), today: "2026-01-05", origin: "demo" });
  await prepareAnswers(engine);
  return engine;
}
