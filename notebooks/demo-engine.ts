import { openAsBlob } from "node:fs";
import { join, resolve } from "node:path";
import { prepareAnswers } from "../src/answers/prepare.ts";
import type { Engine } from "../src/db/engine.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { prepareSchema } from "../src/db/prepare.ts";
import { TABLES } from "../src/records/columns.ts";
import { importFiles } from "../src/records/importing.ts";
import { openMemoryLedger } from "../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../src/records/load-vocabulary.ts";

/** The demo shop in the engine, through the importer that also reads a shop's own files. */
export async function demoEngine(): Promise<Engine> {
  const engine = await openNodeEngine(), folder = resolve(import.meta.dirname, "../data/demo");
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const files = await Promise.all(TABLES.map(async ({ name }) => ({ name: `${name}.csv`, blob: await openAsBlob(join(folder, `${name}.csv`)) })));
  await importFiles(files, { engine, ledger: openMemoryLedger(), today: "2026-01-05", origin: "demo" });
  await prepareAnswers(engine);
  return engine;
}
