import { makeDemo } from "../../data/demo-shop/demo.ts";
import type { DemoShop } from "../../data/demo-shop/demo.ts";
import type { Row } from "../../data/demo-shop/rows.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { derive, prepareSchema } from "../../src/db/prepare.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

/** Columns of the invented tables that are written yes or no. */
const FLAGS = new Set(["warranty", "routine", "sealed", "essential"]);
const TABLES = ["tickets", "findings", "models", "parts", "fits", "suppliers", "orders"] as const;
const AT_ONCE = 500;

function literal(name: string, value: Row[string] | undefined): string {
  if (value === null || value === undefined || value === "") return "null";
  if (FLAGS.has(name)) return String(value === "yes");
  return typeof value === "number" ? String(value) : `'${value.replaceAll("'", "''")}'`;
}

function inserts(table: string, rows: readonly Row[]): string[] {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return Array.from({ length: Math.ceil(rows.length / AT_ONCE) }, (_, i) => {
    const values = rows.slice(i * AT_ONCE, (i + 1) * AT_ONCE).map((row) => `(${columns.map((name) => literal(name, row[name])).join(", ")})`);
    return `insert into ledger.${table} (${columns.join(", ")}) values ${values.join(", ")}`;
  });
}

/**
 * Fills the engine with the invented shop of a seed and nothing else, past the importer, which has its own tests and takes
 * most of the time.
 */
export async function fillSeed(engine: Engine, seed: number, without: readonly string[] | "all" = []): Promise<DemoShop> {
  const demo = makeDemo(seed, { without });
  await prepareSchema(engine);
  await loadVocabulary(engine);
  await engine.run(TABLES.flatMap((table) => inserts(table, demo.tables[table])));
  await derive(engine);
  await prepareAnswers(engine);
  return demo;
}
