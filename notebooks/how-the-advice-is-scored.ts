import { askReplay } from "../src/answers/replay/ask-replay.ts";
import type { PolicyScore, Spread } from "../src/answers/replay/replay.ts";
import { scoreChart } from "../src/rooms/stock/score-chart.ts";
import { meanStep, pinballLoss, scaledError } from "../src/stats/forecast-scores.ts";
import { number } from "../src/ui/format.ts";
import { readCase } from "../tests/reference/read-case.ts";
import { TODAY } from "./binding/demo.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";

/** How good was the stock advice on the shop's own past, against two habits and what happened? And how is a forecast scored? */
const whole = (value: number) => number(value, 0, BOARD.locale);
const spread = (value: Spread | null) => (value === null ? "–" : `${whole(value.mean)} (${whole(value.low)} to ${whole(value.high)})`);
const cell = (value: number | null, digits = 0) => (value === null ? "–" : number(value, digits, BOARD.locale));

const row = ({ policy, waited, jobs_without_wait, wait_days, stock_value_mean, orders, spend, carriage, dead_stock }: PolicyScore) =>
  [policy, spread(waited), cell(jobs_without_wait === null ? null : 100 * jobs_without_wait, 1), cell(wait_days, 1), spread(stock_value_mean), cell(orders), cell(spend), cell(carriage), cell(dead_stock)];

/** The yardsticks that choose between ways to look ahead, on a worked example, beside R's values. */
function yardsticks(): string {
  const { rows, expected: { values } } = readCase("10-seasonal/accuracy-measures"), train = rows.filter(({ part }) => part === "train").map((one) => Number(one["y"])), tested = rows.filter(({ part }) => part === "test");
  const of = (key: string) => tested.map((one) => Number(one[key])), actual = of("y"), taus = values["taus"] as unknown as number[], pinballs = values["pinball"] as unknown as number[];
  const losses = taus.map((tau, i) => { const said = of(`q${100 * tau}`); return [`loss of the ${100 * tau} % mark`, actual.reduce((sum, y, t) => sum + pinballLoss(y, said[t] as number, tau), 0) / actual.length, pinballs[i] as number] as const; });
  const steps = meanStep(train, 1) as number, all = [...losses, ["miss, in steps of the past", scaledError(actual, of("forecast"), steps), values["mase_lag1"] as unknown as number] as const];
  return table(["yardstick", "ours:", "R:"], all.map(([name, ours, theirs]) => [name, ours.toFixed(4), theirs.toFixed(4)]));
}

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const { from, to, scores, draws, groups, verdict, notes } = await askReplay(await demo.engine(), { as_of: TODAY });
  return [
    text("# How the advice is scored", "",
      "Advice is easy to give and seldom held to account. Here the demo shop's own past is lived through again: on each order day only what was written by then is known, each way of ordering orders, deliveries come after the days they took, and jobs take parts from the shelf or wait.", "",
      `${from ?? "–"} to ${to ?? "–"}, ${whole(scores[0]?.jobs ?? 0)} jobs, ${groups} parts, ${draws} draws of delivery times; in brackets what eight draws in ten lie between.`),
    table(["way of ordering", "jobs that waited:", "straight through, of 100:", "days waited:", "on the shelf:", "orders:", "spent:", "carriage:", "dead at the end:"], scores.map(row)),
    picture("Jobs that waited against money on the shelf", "A mark for each way of ordering; further down and left is better; upright strokes are what eight draws in ten lie between.", scoreChart(scores, "cu", BOARD)),
    text(...verdict.map((sentence) => `- ${sentence}`)),
    text("Money on the shelf and jobs that wait are two ends of one stick: a habit that keeps less lets more jobs wait. So the advice is tried at several",
      "chances of running out, and a habit is beaten where one of them is better on both counts."),
    text("## How it was done", "", ...notes.map((note) => `- ${note}`)),
    text("## How a forecast is scored", "",
      "A forecast of reels says a range, not a number, so it is scored on its range: for a mark that 90 of 100 weeks should stay under, a week above it costs nine times what a week below it costs by as much.",
      "The least loss in the long run is had by whoever names the true mark. Four weeks of a worked example, with one week of nought on which per cents break down:"),
    yardsticks(),
    sources(
      "Living through the past again is our own: `src/answers/replay`; what it knows on a day is held down by a test.",
      "Losses of marks: Gneiting & Raftery (2007), JASA 102:359–378. Misses in steps of the past: Hyndman & Koehler (2006), International Journal of Forecasting 22:679–688. `src/stats/forecast-scores.ts`; worked example `tests/reference/10-seasonal/accuracy-measures` (R 4.2.2)."),
  ];
}

export const main = (): Promise<number> => told(notebook);
