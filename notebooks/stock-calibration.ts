import { stockPast } from "../src/answers/stock/stock-past.ts";
import { openNodeEngine } from "../src/db/open-node.ts";
import { fillSeed } from "../tests/answers/seed-shop.ts";
import { meanOf, outcomes } from "../tests/answers/stock-outcome.ts";
import type { Outcome } from "../tests/answers/stock-outcome.ts";

/**
 * Does the shelf last as often as it is meant to? The advice of past days, from what was known on each, against what was used.
 *
 * `npm run notebook -- notebooks/stock-calibration.ts` does twenty invented shops. A level is a whole number of pieces, so
 * a thin line's lasts more often than asked for; what it promised itself is told beside.
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

export async function notebook(seeds: readonly number[] = [1], step = 84): Promise<string> {
  const done = await shops(seeds, step), of = (part_class: string) => done.map(({ seed, all }) => ({ seed, some: all.filter((one) => one.part_class === part_class) }));
  const bySize = CLASSES.flatMap((part_class) => SIZES.flatMap(([from, to, words]) => {
    const some = done.flatMap(({ all }) => all).filter((one) => one.part_class === part_class && one.pieces >= from && one.pieces < to);
    return some.length === 0 ? [] : [`| ${part_class} | ${words} | ${some.length} | ${promised(some)} | ${share(some)} |`];
  }));
  return [
    "# How often the shelf lasts", "", `${seeds.length} invented shops, the advice of every ${step} days from the second year on, over all of a supplier's delivery times.`, "",
    "| class | meant to last, % | promised, % | lasted, % | lowest and highest shop | cases |", "| --- | ---: | ---: | ---: | --- | ---: |",
    ...CLASSES.map((part_class) => {
      const parts = of(part_class), all = parts.flatMap(({ some }) => some), each = parts.map(({ some }) => Number(share(some)));
      return `| ${part_class} | ${TARGETS[part_class]} | ${promised(all)} | ${share(all)} | ${Math.min(...each)} to ${Math.max(...each)} | ${all.length} |`;
    }), "",
    "| class | pieces in the days that counted | cases | promised, % | lasted, % |", "| --- | --- | ---: | ---: | ---: |", ...bySize, "",
  ].join("\n");
}

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook(Array.from({ length: 20 }, (_, i) => i + 1), 28)}\n`);
  return 0;
}
