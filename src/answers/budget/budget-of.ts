import { unpackedRows } from "../../db/packed-rows.ts";
import { seededRandom } from "../../stats/random.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { money } from "../wording.ts";
import { takingTurns } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { Budget, BudgetGroup, BudgetRecords, BudgetStep } from "./budget.ts";
import { budgetNotes } from "./budget-notes.ts";
import { buyingOrder } from "./buying-order.ts";
import { followed } from "./followed.ts";
import type { Fared } from "./followed.ts";
import { costOf, piecesOf } from "./ladder.ts";
import type { Ladder } from "./ladder.ts";
import { jobCount } from "./needs.ts";
import { dayNumber, pastJobs } from "./past-jobs.ts";
import { PastWeeks, WEEK } from "./past-weeks.ts";
import type { Purchase } from "./purchase.ts";
import { rush } from "./rush.ts";
import { roundedOrder } from "../../stats/order-quantity.ts";
import { scenarios } from "./scenarios.ts";
import type { Ahead } from "./scenarios.ts";

/** Most futures to choose on, fewest, and how many jobs all of them together should hold: many jobs a future need fewer futures. */
const MOST_FUTURES = 2000, FEWEST_FUTURES = 200, JOBS_IN_ALL = 1_000_000;
const PROBED = 20;
const SEED = 20260105;

const ladderOf = ({ position, pack_qty, min_order_qty, unit_cost }: BudgetGroup): Ladder =>
  ({ position, first: roundedOrder(1, pack_qty, min_order_qty), pack: pack_qty, unit_cost });

/** Purchases in words of pieces and money; a group bought again adds to what was bought before. */
function stepsOf(order: readonly Purchase[], ladders: readonly Ladder[], futures: number): BudgetStep[] {
  const bought = new Int32Array(ladders.length);
  return order.map(({ groups, to, jobs }) => ({
    jobs: jobs / futures,
    bought: groups.map((group, i) => {
      const ladder = ladders[group] as Ladder, from = bought[group] as number, rung = to[i] as number;
      bought[group] = rung;
      return { group, pieces: piecesOf(ladder, rung) - piecesOf(ladder, from), cost: money(costOf(ladder, from, rung)) };
    }),
  }));
}

const nothing = { steps: [] as BudgetStep[], fared: [] as Fared[], jobs: 0, years: 0, scenarios: MOST_FUTURES, checked_on: MOST_FUTURES / 2 };

/** How many futures to choose on, by the jobs that a few of them hold. */
function futuresFor(ahead: Ahead): number {
  const jobs = jobCount(scenarios(ahead, PROBED, seededRandom(SEED + 1))) / PROBED;
  return Math.max(FEWEST_FUTURES, Math.min(MOST_FUTURES, Math.floor(JOBS_IN_ALL / Math.max(1, jobs))));
}


async function chosen({ question, groups, parts, intake }: BudgetRecords, lasting: number | null, means: WorkMeans): Promise<typeof nothing> {
  const turn = takingTurns(means), jobs = pastJobs(unpackedRows(parts), groups.map(({ interchange }) => interchange)), first = intake[0]?.day;
  // Reels that are still on the bench have not shown all they need, so the newest days count as they stand.
  const last = intake.at(-1)?.day;
  if (first === undefined || last === undefined || jobs.length === 0 || daysFrom(first, last) < WEEK - 1) return nothing;
  const weeks = new PastWeeks(jobs, dayNumber(first), dayNumber(last)), factor = question.lead_factor;
  const delivered = groups.map(({ supplier, lead_days, lead_sd, review_days }) => ({ supplier, lead_days: lead_days * factor, lead_sd: lead_sd * factor, review_days }));
  const ahead: Ahead = { weeks, groups: delivered, from: dayNumber(question.as_of) + 1, lasting }, ladders = groups.map(ladderOf);
  const futures = futuresFor(ahead), checked_on = Math.ceil(futures / 2), random = seededRandom(SEED), needs = scenarios(ahead, futures, random);
  if (jobCount(needs) === 0) return nothing;
  await turn("Playing through what may come in", 1, 4);
  const order = await buyingOrder(needs, ladders, (step) => turn("Choosing what to buy first", step, null));
  const fared = followed(scenarios(ahead, checked_on, random), ladders, order);
  return { steps: stepsOf(order, ladders, futures), fared, jobs: jobCount(needs) / futures, years: weeks.years, scenarios: futures, checked_on };
}

/**
 * What each unit of money spent on stock today does for the jobs ahead, and what to buy with it (METHODS.md 6).
 *
 * Plain rows in and out, so it may run in a worker. The same records give the same answer.
 *
 * @throws the signal's reason when called off
 */
export async function budgetOf(records: BudgetRecords, means: WorkMeans = {}): Promise<Budget> {
  const { question, groups, left_out, intake } = records, busy = rush(intake, question.as_of), from = dayAfter(question.as_of, 1);
  const until = question.lasting === "rush" && busy !== null ? busy.until : null;
  const answer = await chosen(records, until === null ? null : daysFrom(question.as_of, until), means);
  const told = { question, groups, left_out, ...answer, rush: busy, from, until };
  return { ...told, notes: budgetNotes(told) };
}
