import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openBrowserEngine } from "../../src/db/open-browser.ts";
import { derive, prepareSchema } from "../../src/db/prepare.ts";
import { importFiles } from "../../src/records/importing.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

const DEMO = import.meta.glob<string>("../../data/demo/*.csv", { query: "?raw", import: "default", eager: true });

/** The demo shop in the browser's engine. */
export async function demoInBrowser(): Promise<Engine> {
  const engine = await openBrowserEngine();
  await prepareSchema(engine);
  await loadVocabulary(engine);
  const files = Object.entries(DEMO).map(([path, text]) => ({ name: path.replace(/^.*\//, ""), blob: new Blob([text]) }));
  await importFiles(files, { engine, ledger: openMemoryLedger(), today: "2026-01-05", origin: "demo" });
  await prepareAnswers(engine);
  return engine;
}

/**
 * The records again and again, each round on reels of its own.
 *
 * @param tickets further columns of the tickets in round `n`, as SQL after `replace`
 */
export async function grow(engine: Engine, rounds: number, tickets: readonly string[]): Promise<void> {
  const more = (table: string, own: readonly string[]) =>
    `insert into ledger.${table} by name select * exclude (n) replace (${own.join(", ")}) from ledger.${table} cross join range(1, ${rounds}) as rounds(n)`;
  await engine.run([
    more("tickets", ["ticket_no || '-' || n as ticket_no", "serial || '-' || n as serial", ...tickets]),
    more("findings", ["ticket_no || '-' || n as ticket_no"]),
  ]);
  await derive(engine);
  await prepareAnswers(engine);
}

/** Inspections that count. */
export async function inspections(engine: Engine): Promise<number> {
  const [found] = await engine.rows<{ n: number }>("select count(*) as n from inspected where counted or written order by n");
  return found?.n ?? 0;
}
