import { makeDemo } from "../../data/demo-shop/demo.ts";
import type { DemoShop } from "../../data/demo-shop/demo.ts";
import type { Row } from "../../data/demo-shop/rows.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import type { Engine } from "../../src/db/engine.ts";
import { derive, prepareSchema } from "../../src/db/prepare.ts";
import { rowsStream } from "../../src/db/rows-stream.ts";
import { table, TABLES } from "../../src/records/columns.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

type Types = Parameters<typeof rowsStream>[0];

/** Numbers and yes or no as such, everything else as text that the engine reads. */
function typesOf(name: string): Types {
  return Object.fromEntries(table(name).columns.filter(({ made }) => !made).map(({ name: column, kind }) =>
    [column, kind === "yes_no" ? "boolean" : ["number", "whole", "money"].includes(kind) ? "double" : "varchar"]));
}

/** An empty text of the invented tables is an empty cell. */
function valuesOf(row: Row, types: Types): Row {
  return Object.fromEntries(Object.entries(types).map(([name, type]) => {
    const value = row[name];
    return [name, value === undefined || value === "" ? null : type === "boolean" ? value === "yes" : value];
  })) as Row;
}

/**
 * Fills the engine with the invented shop of a seed and nothing else, past the importer, which has its own tests and takes
 * most of the time.
 */
export async function fillSeed(engine: Engine, seed: number, without: readonly string[] | "all" = []): Promise<DemoShop> {
  const demo = makeDemo(seed, { without });
  await prepareSchema(engine);
  await loadVocabulary(engine);
  for (const { name } of TABLES) {
    const types = typesOf(name), rows = demo.tables[name].map((row) => valuesOf(row, types));
    await engine.load(`ledger.${name}`, rowsStream(types, rows as Parameters<typeof rowsStream>[1]), rows.length);
  }
  await derive(engine);
  await prepareAnswers(engine);
  return demo;
}
