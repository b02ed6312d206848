import { askBudget } from "../answers/budget/ask-budget.ts";
import type { Budget } from "../answers/budget/budget.ts";
import { askReplay } from "../answers/replay/ask-replay.ts";
import type { PolicyScore, Replay, Spread } from "../answers/replay/replay.ts";
import type { Engine } from "../db/engine.ts";
import type { ReportTable } from "./table.ts";

const CURVE = ["spend", "jobs_without_wait", "lines_filled", "jobs", "waiting", "waiting_low", "waiting_high", "bought", "cost", "note"];
const SCORE = [
  "policy", "jobs_without_wait", "stock_value_mean", "orders", "spend", "kind", "jobs", "waited", "waited_low", "waited_high", "wait_days",
  "stock_value_low", "stock_value_high", "carriage", "dead_stock", "note",
];

/** What a step buys: `5 x LWP-YF15; 2 x BSL-EK30`. */
const boughtIn = ({ steps, groups }: Budget, step: number): string =>
  (steps[step]?.bought ?? []).map(({ group, pieces }) => `${pieces} x ${groups[group]?.part_no ?? ""}`).join("; ");

/** What money spent on stock does for the jobs until the order after this one: a row before any money, then one a purchase. */
export function stockCurveTable(budget: Budget): ReportTable {
  const rows = budget.fared.map((fared, i) => ({
    ...fared, jobs: budget.jobs, bought: i === 0 ? "" : boughtIn(budget, i - 1),
    cost: i === 0 ? 0 : (budget.steps[i - 1]?.bought ?? []).reduce((sum, { cost }) => sum + cost, 0), note: i === 0 ? budget.notes.join(" ") : "",
  }));
  const none = Object.fromEntries(CURVE.map((column) => [column, column === "note" ? budget.notes.join(" ") : null]));
  return { file: "stock-curve.csv", columns: CURVE, rows: rows.length > 0 ? rows : [none] };
}

const over = (spread: Spread | null, name: string) => ({ [`${name}_low`]: spread?.low ?? null, [`${name}_high`]: spread?.high ?? null });

const scored = ({ waited, stock_value_mean, ...score }: PolicyScore, note: string) => ({
  ...score, waited: waited?.mean ?? null, ...over(waited, "waited"), stock_value_mean: stock_value_mean?.mean ?? null, ...over(stock_value_mean, "stock_value"), note,
});

/** The advice, at each level of it, against two habits and what happened; the verdict stands in the first row's note. */
export function adviceScoreTable({ scores, verdict, notes }: Replay): ReportTable {
  const said = [...verdict, ...notes].join(" "), none = Object.fromEntries(SCORE.map((column) => [column, column === "note" ? said : column === "policy" ? "as advised" : null]));
  return { file: "advice-score.csv", columns: SCORE, rows: scores.length > 0 ? scores.map((score, i) => scored(score, i === 0 ? said : "")) : [none] };
}

/** Both for one day. */
export async function stockTables(engine: Engine, as_of: string): Promise<readonly ReportTable[]> {
  return [stockCurveTable(await askBudget(engine, { as_of })), adviceScoreTable(await askReplay(engine, { as_of }))];
}
