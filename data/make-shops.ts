import { once } from "node:events";
import { createWriteStream, mkdirSync } from "node:fs";
import { join } from "node:path";
import { makeDemo } from "./make-demo.ts";
import { COLUMNS, csv } from "./demo-shop/rows.ts";
import type { Row, TableName } from "./demo-shop/rows.ts";

/** Columns whose values are one round's own: a ticket, a reel or a batch of one round is none of another. */
const OWN: Partial<Record<TableName, readonly string[]>> = { tickets: ["ticket_no", "serial", "batch"], findings: ["ticket_no"] };
/** Shops that are made from a seed of their own; the others repeat them with other numbers. */
const SEEDS = 12;

const USAGE = "Usage: node src/commands/run-ts.mjs data/make-shops.ts OUT_FOLDER [--shops 60] [--findings 20000000]";

/** The row as it is written in a later round. */
const again = (row: Row, own: readonly string[], round: number): Row => ({
  ...row, ...Object.fromEntries(own.filter((column) => row[column] !== null && row[column] !== "").map((column) => [column, `${String(row[column])}-${round}`])),
});

/** Writes one shop, round by round: memory holds one round. */
async function writeShop(folder: string, tables: Readonly<Record<TableName, readonly Row[]>>, findings: number): Promise<number> {
  mkdirSync(folder, { recursive: true });
  const rounds = Math.max(1, Math.round(findings / tables.findings.length));
  for (const name of Object.keys(COLUMNS) as TableName[]) {
    const own = OWN[name], out = createWriteStream(join(folder, `${name}.csv`));
    for (let round = 0; round < (own ? rounds : 1); round += 1) {
      const text = csv(COLUMNS[name], round === 0 || !own ? tables[name] : tables[name].map((row) => again(row, own, round)));
      if (!out.write(round === 0 ? text : text.slice(text.indexOf("\n") + 1))) await once(out, "drain");
    }
    out.end();
    await once(out, "finish");
  }
  return rounds * tables.findings.length;
}

/** Writes many invented shops as partitions `shop=NAME`, made of the demo shop from several seeds, each as often as is asked for. */
export async function main(argv: readonly string[]): Promise<number> {
  const [folder] = argv, value = (name: string, usual: number) => (argv.includes(name) ? Number(argv[argv.indexOf(name) + 1]) : usual);
  const shops = value("--shops", 60), findings = value("--findings", 20_000_000);
  if (folder === undefined || folder.startsWith("--") || !Number.isInteger(shops) || shops < 1 || !(findings > 0)) {
    console.error(USAGE);
    return 2;
  }
  let written = 0;
  const known = new Map<number, ReturnType<typeof makeDemo>["tables"]>();
  for (let shop = 0; shop < shops; shop += 1) {
    const seed = 1 + (shop % SEEDS), tables = known.get(seed) ?? makeDemo(seed).tables;
    known.set(seed, tables);
    written += await writeShop(join(folder, `shop=Shop%20${String(shop + 1).padStart(3, "0")}`), tables, findings / shops);
  }
  console.log(`${shops} shops with ${written} findings in ${folder}.`);
  return 0;
}
