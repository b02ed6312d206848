import { askReplay } from "../src/answers/replay/ask-replay.ts";
import type { PolicyScore, Spread } from "../src/answers/replay/replay.ts";
import { demoEngine } from "./demo-engine.ts";

/**
 * How good was the stock advice on the shop's own past, against two habits and what happened?
 *
 * Run it with `npm run notebook -- notebooks/how-the-advice-is-scored.ts`.
 */
const spread = (value: Spread | null) => (value === null ? "–" : `${value.mean.toFixed(0)} (${value.low.toFixed(0)} to ${value.high.toFixed(0)})`);
const cell = (value: number | null, digits = 0) => (value === null ? "–" : value.toFixed(digits));

const row = ({ policy, waited, jobs_without_wait, wait_days, stock_value_mean, orders, spend, carriage, dead_stock }: PolicyScore) =>
  `| ${policy} | ${spread(waited)} | ${cell(jobs_without_wait === null ? null : 100 * jobs_without_wait, 1)} | ${cell(wait_days, 1)} | ${spread(stock_value_mean)} | ${cell(orders)} | ${cell(spend)} | ${cell(carriage)} | ${cell(dead_stock)} |`;

export async function notebook(): Promise<string> {
  const engine = await demoEngine();
  try {
    const { from, to, scores, draws, groups, verdict, notes } = await askReplay(engine, { as_of: "2026-01-05" });
    return [
      "# How the advice is scored", "",
      `${from ?? "–"} to ${to ?? "–"}, ${scores[0]?.jobs ?? 0} jobs, ${groups} parts, ${draws} draws of delivery times; in brackets what eight draws in ten lie between.`, "",
      "| way of ordering | jobs that waited | straight through, of 100 | days waited | on the shelf | orders | spent | carriage | dead at the end |",
      "| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |", ...scores.map(row), "",
      ...verdict.map((sentence) => `- ${sentence}`), "", "## How it was done", "", ...notes.map((note) => `- ${note}`), "",
      "Money on the shelf and jobs that wait are two ends of one stick: a habit that keeps less lets more jobs wait. So the advice is tried at several",
      "chances of running out, and a habit is beaten where one of them is better on both counts.", "",
    ].join("\n");
  } finally {
    await engine.close();
  }
}

export async function main(): Promise<number> {
  process.stdout.write(`${await notebook()}\n`);
  return 0;
}
