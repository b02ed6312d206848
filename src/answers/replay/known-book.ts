import { seededRandom } from "../../stats/random.ts";
import { jobLevels } from "../budget/job-levels.ts";
import { dayNumber } from "../budget/past-jobs.ts";
import type { PastJob } from "../budget/past-jobs.ts";
import { PastWeeks } from "../budget/past-weeks.ts";
import { dayAfter } from "../days.ts";
import { orderAdvice } from "../stock/order-advice.ts";
import type { StockPast } from "../stock/order-advice.ts";
import type { RestockLine, RestockSettings } from "../stock/restock-line.ts";
import { JOB_SHARES } from "./rules.ts";
import type { KnownBook, KnownThen } from "./rules.ts";
import type { ReplayGroup, World } from "./world.ts";

const EPOCH = "1970-01-01", YEAR = 365;
/** Futures that the levels for the jobs are worked out on, every order day anew. */
const FUTURES = 300, SEED = 9;
/** Levels do not hang on the shelf, so the advice is asked for with none. */
const BARE = { on_hand: new Map<string, number>(), on_order: new Map<string, number>(), waiting: new Map<string, number>() };

/** What a replay goes by; nothing of it that is later than an order day is looked at on that day. */
export interface WrittenPast {
  readonly past: StockPast;
  /** Jobs by the place of their groups in the replay, of the whole past. */
  readonly jobs: readonly PastJob[];
  readonly settings: Omit<RestockSettings, "as_of">;
}

/** Days on which an order may go to some supplier. */
export function orderDays({ first, last, suppliers }: Pick<World, "first" | "last" | "suppliers">): number[] {
  const days = new Set<number>();
  for (const { review_days } of suppliers) for (let day = first; day <= last; day += review_days) days.add(day);
  return [...days].sort((a, b) => a - b);
}

/** Pieces a day of each group in the twelve months up to a day, or since the records begin. */
function dailyUse(past: StockPast, day: string): ReadonlyMap<string, number> {
  const first = past.intake[0]?.day ?? day, days = Math.min(YEAR, dayNumber(day) - dayNumber(first) + 1), from = dayAfter(day, 1 - days), use = new Map<string, number>();
  for (const row of past.use) if (row.day >= from && row.day <= day) use.set(row.interchange, (use.get(row.interchange) ?? 0) + row.pieces / days);
  return use;
}

async function levelsForJobs(day: number, lines: readonly RestockLine[], groups: readonly ReplayGroup[], { past, jobs }: WrittenPast): Promise<number[][]> {
  const first = dayNumber(past.intake[0]?.day ?? dayAfter(EPOCH, day)), weeks = new PastWeeks(jobs.filter((job) => job.day <= day), first, day);
  const delivered = lines.map(({ supplier, lead, review_days }, i) => ({ supplier, lead_days: lead.days, lead_sd: lead.sd, review_days, unit_cost: groups[i]?.unit_cost ?? 0 }));
  return jobLevels({ weeks, groups: delivered, from: day + 1 }, JOB_SHARES, FUTURES, seededRandom(SEED));
}

/** What each way of ordering knew on one day: of the past only what is not later. */
export async function knownOn(day: number, groups: readonly ReplayGroup[], written: WrittenPast): Promise<KnownThen[]> {
  const { past, settings } = written, as_of = dayAfter(EPOCH, day), advice = new Map(orderAdvice(past, BARE, { ...settings, as_of }).map((line) => [line.interchange, line]));
  const lines = groups.map(({ interchange }) => {
    const line = advice.get(interchange);
    if (!line) throw new RangeError(`knownOn: the advice has no line for ${interchange}`);
    return line;
  });
  const use = dailyUse(past, as_of), for_jobs = await levelsForJobs(day, lines, groups, written);
  return lines.map(({ interchange, order_up_to, protection_days }, group) =>
    ({ level: order_up_to, job_levels: for_jobs.map((levels) => levels[group] ?? 0), daily_use: use.get(interchange) ?? 0, protection_days }));
}

/** The same for every order day of a replay; `pause` is called after each. */
export async function knownBook(world: World, written: WrittenPast, pause: (done: number, all: number) => Promise<void> = () => Promise.resolve()): Promise<KnownBook> {
  const days = orderDays(world), book = new Map<number, KnownThen[]>();
  for (const day of days) {
    book.set(day, await knownOn(day, world.groups, written));
    await pause(book.size, days.length);
  }
  return book;
}
