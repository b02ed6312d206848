import { stockPast } from "../src/answers/stock/stock-past.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { fillSeed } from "../tests/answers/seed-shop.ts";
import { meanOf, outcomes } from "../tests/answers/stock-outcome.ts";
import type { Outcome } from "../tests/answers/stock-outcome.ts";
import { smallestLevel, stockLevel } from "../src/stats/stock-level.ts";
import type { Demo } from "./binding/demo.ts";
import { demoShop, TODAY } from "./binding/demo.ts";
import { asText, BOARD, picture, sources, table, text } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";
import { rangesChart } from "./binding/ranges-chart.ts";
import type { Ranged } from "./binding/ranges-chart.ts";

/**
 * Does the shelf last as often as it is meant to? The advice of past days, from what was known on each, against what was used.
 *
 * `npm run notebook` does twenty invented shops; the page and the test do one. A level is a whole number of pieces, so a thin
 * line's lasts more often than asked for; what it promised itself is told beside.
 */
const TARGETS = { A: 95, B: 90, C: 80 } as const;
const CLASSES = ["A", "B"] as const;
const SIZES = [[0, 1, "none"], [1, 12, "1 to 11"], [12, 60, "12 to 59"], [60, Infinity, "60 and more"]] as const;

const share = (list: readonly Outcome[]): string => (100 * meanOf(list.map((one) => one.lasted))).toFixed(1);
function promised(list: readonly Outcome[]): string {
  const told = list.flatMap((one) => (one.promised === null ? [] : [one.promised]));
  return told.length === 0 ? "–" : (100 * meanOf(told)).toFixed(1);
}

/** The outcomes of each shop of a seed, its advice asked every `step` days. */
async function shops(seeds: readonly number[], step: number): Promise<{ seed: number; all: Outcome[] }[]> {
  const engine = await openNodeEngine(), found: { seed: number; all: Outcome[] }[] = [];
  try {
    for (const seed of seeds) {
      await fillSeed(engine, seed);
      found.push({ seed, all: outcomes(await stockPast(engine, "2026-01-05"), step) });
    }
    return found;
  } finally {
    await engine.close();
  }
}

/** Levels for an even chance of use: the textbook case, in which a shelf is refilled one by one. */
const textbook = (): string => table(["mean use until refilled:", "pieces to hold for 95 in 100:", "lasts then, of 100:", "pieces waited for on average:"], [0.5, 1, 2, 5, 10].map((mean) => {
  const demand = { mean, size: Infinity }, level = smallestLevel(0.95, demand), { readyRate, backorders } = stockLevel(level, demand);
  return [String(mean), String(level), (100 * readyRate).toFixed(1), backorders.toFixed(3)];
}));

type Shop = { readonly name: string; readonly all: readonly Outcome[] };

/** How often a class lasted, with what single shops or, of one shop, its own cases lie between. */
function lastedOf(done: readonly Shop[], part_class: "A" | "B"): Ranged {
  const each = done.map(({ all }) => Number(share(all.filter((one) => one.part_class === part_class)))), cases = done.flatMap(({ all }) => all.filter((one) => one.part_class === part_class));
  return { name: `class ${part_class}, meant to last ${TARGETS[part_class]}`, value: Number(share(cases)), low: Math.min(...each), high: Math.max(...each), counts: `${cases.length} cases` };
}

function sizeRows(all: readonly Outcome[]): string[][] {
  return CLASSES.flatMap((part_class) => SIZES.flatMap(([from, to, words]) => {
    const some = all.filter((one) => one.part_class === part_class && one.pieces >= from && one.pieces < to);
    return some.length === 0 ? [] : [[part_class, words, String(some.length), promised(some), share(some)]];
  }));
}

export async function notebook(demo: Demo, seeds: readonly number[] = [1], step = 84): Promise<readonly Piece[]> {
  const own = { name: "the demo shop", all: outcomes(await stockPast(await demo.engine(), TODAY), step) }, done: Shop[] = [own, ...(await shops(seeds, step)).map(({ seed, all }) => ({ name: `seed ${seed}`, all }))];
  const ranges = CLASSES.map((part_class) => lastedOf(done, part_class));
  return [
    text("# How often the shelf lasts", "",
      `A reorder point is meant to last until the next order is in: for class A parts (a job cannot be finished without) in 95 of 100 cases, for class B in 90. Here is the advice of every ${step} days from the second year on, from what was known that day, against what was used then, over all of a supplier's delivery times: the demo shop and ${seeds.length} more invented ${seeds.length === 1 ? "shop" : "shops"}.`),
    table(["class", "meant to last, %:", "promised, %:", "lasted, %:", "lowest and highest shop:", "cases:"], CLASSES.map((part_class, i) => {
      const some = done.flatMap(({ all }) => all.filter((one) => one.part_class === part_class)), { value, low, high } = ranges[i] as Ranged;
      return [part_class, String(TARGETS[part_class]), promised(some), String(value), `${low ?? "–"} to ${high ?? "–"}`, String(some.length)];
    })),
    picture("How often the shelf lasted", "Cases in which the advised level lasted until the next order was in, per cent; the stroke goes from the lowest shop to the highest.", rangesChart({ rows: ranges, axis: "lasted, of 100 cases (stroke: lowest to highest shop)", beside: { at: 95, name: "A" }, from: 60 }, BOARD)),
    text("## Thin lines and thick ones", "", "A level is a whole number of pieces, so most lines are promised a little more than was asked for: one piece less would be too few. What had never been used before can only be guessed from other parts, and a handful of cases decides nothing."),
    table(["class", "pieces in the days that counted", "cases:", "promised, %:", "lasted, %:"], sizeRows(done.flatMap(({ all }) => all))),
    text("## The textbook case", "", "The same step shows where use is even, nothing is guessed and every piece is ordered again at once: the smallest level that lasts in 95 of 100 cases lasts in 95 to 99."),
    textbook(),
    sources(
      "Levels under one-for-one refilling: Feeney & Sherbrooke (1966), Management Science 12:391–411; `src/stats/stock-level.ts`, compared with exact sums in R in `tests/reference/09-inventory`.",
      "Looking back from past days with what was known then: `tests/answers/stock-outcome.ts`, which a test holds to these figures."),
  ];
}

export async function main(): Promise<number> {
  const demo = demoShop();
  try {
    process.stdout.write(`${asText(await notebook(demo, Array.from({ length: 20 }, (_, i) => i + 1), 28))}\n`);
    return 0;
  } finally {
    await demo.close();
  }
}
