import { askBudget, budgetRecords } from "../src/answers/budget/ask-budget.ts";
import { boughtWith, moneyFor } from "../src/answers/budget/bought-with.ts";
import type { Budget, BudgetQuestion } from "../src/answers/budget/budget.ts";
import { BUDGET_DEFAULTS } from "../src/answers/budget/budget.ts";
import { buyingOrder } from "../src/answers/budget/buying-order.ts";
import { followed } from "../src/answers/budget/followed.ts";
import { NeedsList } from "../src/answers/budget/needs.ts";
import { dayNumber, pastJobs } from "../src/answers/budget/past-jobs.ts";
import type { PastJob } from "../src/answers/budget/past-jobs.ts";
import { PastWeeks, WEEK } from "../src/answers/budget/past-weeks.ts";
import type { Weeks } from "../src/answers/budget/past-weeks.ts";
import { scenarios } from "../src/answers/budget/scenarios.ts";
import { unpackedRows } from "../src/db/packed-rows.ts";
import { budgetChart } from "../src/rooms/stock/budget-chart.ts";
import { drawPoisson } from "../src/stats/draws.ts";
import { seededRandom } from "../src/stats/random.ts";
import type { Engine } from "../src/db/engine.ts";
import marginal from "../tests/reference/09-inventory/marginal-analysis/expected.json";
import { TODAY } from "./binding/demo.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told as printed } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";

/**
 * What does one more unit of money on the shelf buy in jobs that do not wait, what should be bought for spring, and did such
 * curves keep what they said?
 */
const SUMS = [0, 25, 50, 100, 200, 400];
const cell = (value: number | null, digits = 0) => (value === null ? "–" : value.toFixed(digits));

function row(answer: Budget, sum: number): string[][] {
  const bought = boughtWith(answer, sum);
  if (!bought) return [];
  const { spend, fared, lines } = bought;
  return [[String(sum), spend.toFixed(2), String(lines.length), (100 * fared.jobs_without_wait).toFixed(1), `${fared.waiting.toFixed(1)} (${cell(fared.waiting_low)} to ${cell(fared.waiting_high)})`, (100 * fared.lines_filled).toFixed(1)]];
}

const curve = (answer: Budget, sums: readonly number[]) =>
  table(["money:", "spent:", "parts:", "straight through, of 100 jobs:", "jobs that wait (8 futures in 10):", "parts there, of 100 needed:"], sums.flatMap((sum) => row(answer, sum)));

function list(answer: Budget, sum: number, most: number): string {
  const lines = boughtWith(answer, sum)?.lines ?? [];
  return table(["part", "pieces:", "cost:", "jobs spared the wait:", "only together with"],
    lines.slice(0, most).map(({ group, pieces, cost, jobs, with: others }) => [group.name ?? group.part_no, String(pieces), cost.toFixed(2), jobs.toFixed(2), others.join(", ")]));
}

/** The same question under what might be otherwise: what 90, 95 and 98 in 100 jobs cost. */
async function whatIfs(engine: Engine): Promise<string> {
  const ways: readonly (readonly [string, Partial<BudgetQuestion>])[] = [
    ["as it is", {}], ["deliveries half as long again", { lead_factor: 1.5 }], ["deliveries twice as long", { lead_factor: 2 }],
    ["a job waits only for what it cannot do without", { held_up_by: "parts it cannot do without" }], ["to last through the busiest weeks", { lasting: "rush" }],
  ];
  const rows: string[][] = [];
  for (const [name, change] of ways) {
    const answer = await askBudget(engine, { as_of: TODAY, ...change });
    rows.push([name, answer.jobs.toFixed(0), ...[0.9, 0.95, 0.98].map((share) => cell(moneyFor(answer, share)))]);
  }
  return table(["what if", "jobs ahead:", "90 in 100:", "95 in 100:", "98 in 100:"], rows);
}

/** What came, week by week, in the place of what might have come. */
const asItWas = (jobs: readonly PastJob[]): Weeks => ({ years: 1, like: (from) => ({ from, jobs: jobs.filter(({ day }) => day >= from && day < from + WEEK), grown: 1 }) });

/** Jobs said to wait if nothing were bought, from what was known on a day, beside those that would have: today's shelf, usual delivery times. */
async function said(engine: Engine): Promise<string> {
  const { groups, parts, intake } = await budgetRecords(engine, { ...BUDGET_DEFAULTS, as_of: TODAY }), jobs = pastJobs(unpackedRows(parts), groups.map(({ interchange }) => interchange));
  const delivered = groups.map(({ supplier, lead_days, review_days }) => ({ supplier, lead_days, lead_sd: 0, review_days })), first = dayNumber(intake[0]?.day ?? TODAY);
  const ladders = groups.map(({ position, unit_cost }) => ({ position, first: 1, pack: 1, unit_cost })), days = Array.from({ length: 20 }, (_, i) => dayNumber("2024-02-01") + 31 * i);
  const told = days.map((day) => {
    const [before] = followed(scenarios({ weeks: new PastWeeks(jobs.filter((job) => job.day <= day), first, day), groups: delivered, from: day + 1, lasting: null }, 400, seededRandom(day)), ladders, []);
    const [came] = followed(scenarios({ weeks: asItWas(jobs), groups: delivered, from: day + 1, lasting: null }, 1, seededRandom(1)), ladders, []);
    return { before, came: came?.waiting ?? 0 };
  });
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const inside = told.filter(({ before, came }) => before && came >= before.waiting_low && came <= before.waiting_high).length;
  return `On ${days.length} days of two years, knowing only what was written by then, ${mean(told.map(({ before }) => before?.waiting ?? 0)).toFixed(1)} jobs were said to wait on average if nothing were bought; ` +
    `${mean(told.map(({ came }) => came)).toFixed(1)} would have. In ${inside} of ${days.length} cases the number lay in the range that eight futures in ten lie between.`;
}

/** Four lines of a published kind, each job one piece of one line: there the rule must buy what marginal analysis buys. */
async function published(futures = 4000, steps = 8): Promise<string> {
  const { means, unit_costs, result } = marginal.values, random = seededRandom(3), needs = new NeedsList();
  for (let future = 0; future < futures; future += 1) {
    means.forEach((mean, item) => {
      const demand = drawPoisson(random, mean);
      for (let level = 1; level <= demand; level += 1) { needs.need(item, level); needs.endJob(); }
    });
    needs.endScenario();
  }
  const ladders = unit_costs.map((unit_cost) => ({ position: 0, first: 1, pack: 1, unit_cost })), order = await buyingOrder(needs.list(), ladders), fared = followed(needs.list(), ladders, order);
  return table(["step:", "published: a piece of line:", "ours:", "spent:", "published: still waited for:", "ours, over futures:"], result.path.slice(0, steps).map((step, i) =>
    [String(step.step), String(step.item), String((order[i]?.groups[0] ?? NaN) + 1), String(step.spend), step.total_ebo.toFixed(2), (fared[i + 1]?.waiting ?? NaN).toFixed(2)]));
}

/** What is on the shelf for parts, and for jobs. */
function twoShares(answer: Budget): string {
  const fared = boughtWith(answer, 0)?.fared;
  return fared ? `With nothing bought, ${(100 * fared.lines_filled).toFixed(0)} of 100 parts needed are there, and ${(100 * fared.jobs_without_wait).toFixed(0)} of 100 jobs go straight through.` : "";
}

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const engine = await demo.engine(), now = await askBudget(engine, { as_of: TODAY }), spring = await askBudget(engine, { as_of: TODAY, lasting: "rush" }), enough = moneyFor(spring, 0.9) ?? 0;
  return [
    text("# Stock for jobs", "",
      `On ${TODAY}, for ${now.jobs.toFixed(0)} jobs that need a part until the order after the next arrives, told on ${now.checked_on} futures that had no part in the choice. A job waits for the last of its parts, so what counts is not how many parts are there but how many jobs go straight through. ${twoShares(now)}`),
    curve(now, SUMS),
    picture("What money does for jobs", "Share of the jobs ahead that go straight through against the money spent, with the band eight futures in ten lie in.", budgetChart({ answer: now, money: 50, end: 400, currency: "cu" }, BOARD)),
    text("## What 50 buys"), list(now, 50, 10),
    text("## Ready for spring", "",
      `The busiest thirteen weeks run from ${spring.rush?.from ?? "–"} to ${spring.rush?.until ?? "–"}, with ${cell(spring.rush?.times_usual ?? 0, 2)} times the usual intake. ` +
      `One order now that lasts to their end, ${spring.jobs.toFixed(0)} jobs ahead: ${enough.toFixed(0)} for nine jobs in ten.`),
    curve(spring, [0, 100, 200, 400, 800, 1600]), list(spring, enough, 12),
    text("## What ifs, in money"), await whatIfs(engine),
    text("## Did such curves keep what they said?", "", await said(engine), "",
      "The part that waits last decides: parts there are always more than jobs that go straight through, so a shop that counts filled lines thinks itself better stocked than its customers do."),
    text("## Where every job needs one part only", "",
      "There the question has a published answer: give the next piece to the line with the largest fall in pieces waited for per money. Four lines with mean demands of " +
      `${marginal.values.means.join(", ")} and costs of ${marginal.values.unit_costs.join(", ")} a piece, exact sums beside our futures:`),
    await published(),
    text("Where jobs need several parts it buys them together when one alone would help nobody: that is the difference to counting lines."),
    sources(
      "The next piece where it does most per money: Sherbrooke (1968), Operations Research 16:122–141; Fox (1966), Management Science 13:210–216; worked out in R with exact sums, `tests/reference/09-inventory/marginal-analysis`.",
      "Futures are whole weeks of the shop's own past, so that parts needed together stay together: `src/answers/budget`. On small cases a test compares the choice with trying everything."),
  ];
}

export const main = (): Promise<number> => printed(notebook);
