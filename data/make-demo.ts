import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { makeDemo } from "./demo-shop/demo.ts";
import { FLAT_COLUMNS } from "./demo-shop/flat-sheet.ts";
import { COLUMNS, csv } from "./demo-shop/rows.ts";
import type { TableName } from "./demo-shop/rows.ts";

export { makeDemo } from "./demo-shop/demo.ts";
export type { DemoShop } from "./demo-shop/demo.ts";

/** The seed of the committed demo shop: one of fifty tried, for showing every planted truth as the mean of many shops does. */
export const DEMO_SEED = 2647;

/** Every file of the demo shop by its path under `data/demo/`. */
export function demoFiles(seed: number): Map<string, string> {
  const { tables, flat } = makeDemo(seed);
  const files = (Object.keys(COLUMNS) as TableName[]).map((name) => [`${name}.csv`, csv(COLUMNS[name], tables[name])] as const);
  return new Map([...files, ["flat/workshop-sheet.csv", csv(FLAT_COLUMNS, flat)]]);
}

/** Writes the demo shop's files. */
export async function main(): Promise<number> {
  const folder = join(import.meta.dirname, "demo");
  mkdirSync(join(folder, "flat"), { recursive: true });
  for (const [name, text] of demoFiles(DEMO_SEED)) {
    writeFileSync(join(folder, name), text);
    console.log(`${name}: ${text.split("\n").length - 2} rows, ${Math.round(text.length / 1024)} kB`);
  }
  return 0;
}
