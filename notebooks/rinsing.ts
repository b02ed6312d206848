import { grouped } from "../src/answers/grouped.ts";
import { conditionFit, effectsOf } from "../src/answers/wear/effects.ts";
import { placeOf } from "../src/answers/wear/all-wear.ts";
import { ALL_WEAR, wearRecords } from "../src/answers/wear/wear-records.ts";
import type { WearEffect } from "../src/answers/wear/wear.ts";
import { demoEngine } from "./demo-engine.ts";

/**
 * What does rinsing buy? How many days of a rinsed reel wear as much as one of a reel never, or sometimes, rinsed, part by part.
 *
 * Run it with `npm run notebook -- notebooks/rinsing.ts`.
 */
const FEWEST_FAILED = 20;

const cell = (effect: WearEffect | undefined) => {
  const ratio = effect?.time_ratio;
  if (!ratio || ratio.value === null) return "–";
  return `${ratio.value.toFixed(2)} (${ratio.low?.toFixed(2) ?? "open"} to ${ratio.high?.toFixed(2) ?? "open"})`;
};

export async function notebook(): Promise<string> {
  const engine = await demoEngine();
  try {
    const { lines, places } = await wearRecords(engine, ALL_WEAR, { position: null, conditions: true });
    const rows = [...grouped(lines, ({ position }) => position)].flatMap(([position, some]) => {
      const fit = conditionFit(some), effects = effectsOf(some, fit, position), of = (level: string) => effects.find((effect) => effect.condition === "rinse" && effect.level === level);
      if (!fit.fit || fit.fit.failed < FEWEST_FAILED) return [];
      return [{ failed: fit.fit.failed, text: `| ${placeOf(places, position).name} | ${fit.fit.failed} | ${cell(of("never"))} | ${cell(of("sometimes"))} |` }];
    });
    return [
      "# What does rinsing buy?",
      "",
      `Days of a reel always rinsed that wear a part as much as one day of a reel that is not, like water, tier and sealing compared. Parts with at least ${FEWEST_FAILED} failures; 95 % limits.`,
      "",
      "| part | failed | never rinsed | sometimes rinsed |",
      "| --- | --- | --- | --- |",
      ...rows.sort((a, b) => b.failed - a.failed).map(({ text }) => text),
      "",
      "The shop was made with 2.0 and 1.4 for every part that salt harms, and 1 for the others. About one limit in twenty misses by chance alone, and",
      "with so many parts some will. It is an association in one shop's records, never a promise to a customer.",
      "",
    ].join("\n");
  } finally {
    await engine.close();
  }
}

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook()}\n`);
  return 0;
}
