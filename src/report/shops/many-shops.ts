import type { Engine } from "../../db/engine.ts";
import { openNativeEngine } from "../../db/open-native.ts";
import { openNodeEngine } from "../../db/open-node.ts";
import { prepareSchema } from "../../db/prepare.ts";
import { csvLine } from "../../records/csv-out.ts";
import { loadVocabulary } from "../../records/load-vocabulary.ts";
import type { OutputFolder } from "../output-folder.ts";
import { rejectedTable } from "../rejected-table.ts";
import { reportTables, taken } from "../report.ts";
import type { ReportSettings } from "../report.ts";
import { tableText } from "../table.ts";
import { KeptShops } from "./kept-shop.ts";
import { pooledReport } from "./pooled-report.ts";
import type { Say } from "./pooled-report.ts";
import { rollUpFile } from "./roll-up-file.ts";
import { shopFiles } from "./shop-folders.ts";
import type { ShopFolder } from "./shop-folders.ts";
import { shopsTable } from "./shops-table.ts";
import type { ShopLine } from "./shops-table.ts";
import { shopsSummary } from "./shops-summary.ts";

export interface ManySettings extends ReportSettings {
  readonly threads: number;
  readonly memory: string;
  /** No report of each shop by itself. */
  readonly pooled_only: boolean;
}

export interface ManyReport {
  readonly shops: number;
  readonly tickets: number;
  readonly inspections: number;
  readonly rejects: number;
  readonly engine: "native" | "wasm";
}

const REJECTED = "rejected.csv";
const KEPT = "-- A place for what shops come to, where there is no second database.\ncreate schema if not exists kept";

/** Native DuckDB where there is one for this machine; else the browser's engine, which has one thread and at most 4 GB. */
async function openEngine({ threads, memory }: ManySettings, folder: string): Promise<{ engine: Engine; kind: ManyReport["engine"] }> {
  const native = await openNativeEngine({ threads, memory, folder });
  if (native) return { engine: native, kind: "native" };
  const engine = await openNodeEngine();
  await engine.run([KEPT]);
  return { engine, kind: "wasm" };
}

const NOTHING = { tickets: 0, findings: 0, inspections: 0, failed: 0, from: null, to: null, rows_read: 0, rows_to_fix: 0 };

/** Reads one shop, writes its own report and keeps what it comes to. */
async function oneShop(engine: Engine, kept: KeptShops, shop: ShopFolder, { write, append }: OutputFolder, settings: ManySettings): Promise<ShopLine> {
  const files = await shopFiles(shop);
  if (files.length === 0) return { shop: shop.name, ...NOTHING, note: "Nothing to read: no tickets.csv, no other table and no sheet." };
  const found = await taken(engine, files, settings);
  if ("nothing" in found) return { shop: shop.name, ...NOTHING, note: found.nothing.replaceAll(/\s+/g, " ") };
  const line = await kept.add(shop.name, found), { columns, rows } = rejectedTable(found.rejects);
  for (const row of rows) await append(REJECTED, csvLine([shop.name, ...columns.map((column) => row[column] ?? null)]));
  if (settings.pooled_only) return line;
  const { files: own } = await reportTables(engine, found, settings);
  for (const [name, text] of own) await write(`shops/${shop.name}/${name}`, text);
  return line;
}

/**
 * Reads many shops one after the other, each through the same importer as alone, and lets the same answers speak of all
 * together: models are compared within shops, and nothing of one shop is taken for another's.
 *
 * Memory is bounded by the largest shop and by what the engine is given; the rest lies on disk beside the output.
 *
 * @param beside a folder for the while
 * @returns `nothing` when no shop holds a row
 */
export async function manyShops(shops: readonly ShopFolder[], out: OutputFolder, beside: string, settings: ManySettings, say: Say): Promise<ManyReport | { readonly nothing: string }> {
  const { engine, kind } = await openEngine(settings, beside);
  try {
    if (kind === "wasm") say("There is no native DuckDB for this kind of machine: the browser's engine calculates, with one thread and less memory.");
    await prepareSchema(engine);
    await loadVocabulary(engine);
    const kept = await KeptShops.open(engine), lines: ShopLine[] = [];
    await out.append(REJECTED, csvLine(["shop", ...rejectedTable([]).columns]));
    for (const [at, shop] of shops.entries()) {
      say(`${at + 1} of ${shops.length}: ${shop.name}`);
      lines.push(await oneShop(engine, kept, shop, out, settings));
    }
    if (lines.every(({ rows_read }) => rows_read === 0)) return { nothing: `Nothing to read. ${lines.map(({ shop, note }) => `${shop}: ${note}`).join(" ")}` };
    await kept.pool();
    for (const table of [shopsTable(lines), ...await pooledReport(engine, say)]) await out.write(table.file, tableText(table));
    await out.write("roll-up.arrow", await rollUpFile(engine));
    const sum = (name: "tickets" | "inspections" | "rows_to_fix") => lines.reduce((total, line) => total + line[name], 0);
    await out.write("summary.json", `${JSON.stringify(shopsSummary(lines, settings, kind), null, 2)}\n`);
    return { shops: lines.filter(({ rows_read }) => rows_read > 0).length, tickets: sum("tickets"), inspections: sum("inspections"), rejects: sum("rows_to_fix"), engine: kind };
  } finally {
    await engine.close();
  }
}
