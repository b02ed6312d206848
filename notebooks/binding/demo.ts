import { openAsBlob } from "node:fs";
import { join, resolve } from "node:path";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { prepareSchema } from "../../src/db/prepare.ts";
import { TABLES } from "../../src/records/columns.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

/** Day on which the demo shop looks at its shelf: the one its records end with. */
export const TODAY = "2026-01-05";

/** The demo shop, opened when it is first asked for and then the same one, so that ten notebooks read its files once. */
export interface Demo {
  readonly engine: () => Promise<Engine>;
  readonly close: () => Promise<void>;
}

/** The demo's files through the importer that also reads a shop's own. */
async function opened(): Promise<Engine> {
  const engine = await openNodeEngine(), folder = resolve(import.meta.dirname, "../../data/demo");
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const files = await Promise.all(TABLES.map(async ({ name }) => ({ name: `${name}.csv`, blob: await openAsBlob(join(folder, `${name}.csv`)) })));
  await importFiles(files, { engine, ledger: openMemoryLedger(), today: TODAY, origin: "demo" });
  await prepareAnswers(engine);
  return engine;
}

export function demoShop(): Demo {
  let engine: Promise<Engine> | null = null;
  return { engine: () => (engine ??= opened()), close: async () => { await (await engine)?.close(); } };
}
