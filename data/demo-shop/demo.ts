import { flatSheet } from "./flat-sheet.ts";
import { draws } from "./random.ts";
import type { Row, TableName } from "./rows.ts";
import { fitRows, modelRows, orderRows, partRows, supplierRows } from "./shelf-tables.ts";
import { past } from "./shop.ts";
import type { Past } from "./shop.ts";
import { written } from "./writing.ts";
import type { Written } from "./writing.ts";

/** The invented shop: its seven tables, the one flat sheet that tells the same with dirt, and the true past they tell of. */
export interface DemoShop { seed: number; tables: Record<TableName, Row[]>; flat: Row[]; written: Written[]; past: Past }

/**
 * The demo shop of a seed: the same seed always gives the same rows.
 *
 * @param options.without codes of planted truths (PT1 … PT15) to leave out, or `"all"`
 * @throws {RangeError} if a code names no planted truth
 */
export function makeDemo(seed: number, options: { without?: readonly string[] | "all" } = {}): DemoShop {
  const truth = past(seed, options.without ?? []), tickets = written(truth, draws(seed, "words"));
  return {
    seed, past: truth, written: tickets, flat: flatSheet(tickets, draws(seed, "flat")),
    tables: {
      tickets: tickets.map(({ ticket }) => ticket), findings: tickets.flatMap(({ findings }) => findings), models: modelRows(truth),
      parts: partRows(truth), fits: fitRows(truth), suppliers: supplierRows(), orders: orderRows(truth),
    },
  };
}
