import { dayNumber } from "../budget/past-jobs.ts";
import { dayAfter } from "../days.ts";
import { orderAdviceFor } from "../stock/order-advice.ts";
import type { StockPast } from "../stock/order-advice.ts";
import type { PartClass, RestockLine, RestockSettings } from "../stock/restock-line.ts";
import { CAUTIONS } from "./rules.ts";
import type { KnownBook, KnownThen } from "./rules.ts";
import type { World } from "./world.ts";

const EPOCH = "1970-01-01", YEAR = 365;
/** Levels do not hang on the shelf, so the advice is asked for with none. */
const BARE = { on_hand: new Map<string, number>(), on_order: new Map<string, number>(), waiting: new Map<string, number>() };
/** No chance of being there may fall to nothing. */
const LEAST_CHANCE = 0.05;

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

/** The targets with every chance of running out so many times as large. */
function runningOut(targets: RestockSettings["targets"], times: number): RestockSettings["targets"] {
  return Object.fromEntries(Object.entries(targets).map(([name, chance]) => [name, Math.max(LEAST_CHANCE, 1 - times * (1 - chance))])) as Record<PartClass, number>;
}

/** What each way of ordering knew on one day: of `past` only what is not later. */
export function knownOn(day: number, names: readonly string[], past: StockPast, settings: Omit<RestockSettings, "as_of">): KnownThen[] {
  const as_of = dayAfter(EPOCH, day), use = dailyUse(past, as_of);
  const targets = CAUTIONS.map(({ times }) => runningOut(settings.targets, times));
  const advice = orderAdviceFor(past, BARE, { ...settings, as_of }, targets).map((lines) => new Map(lines.map((line) => [line.interchange, line])));
  return names.map((name) => {
    const lines = advice.map((by_name): RestockLine => {
      const line = by_name.get(name);
      if (!line) throw new RangeError(`knownOn: the advice has no line for ${name}`);
      return line;
    });
    return { levels: lines.map(({ order_up_to }) => order_up_to), daily_use: use.get(name) ?? 0, protection_days: lines[0]?.protection_days ?? 0 };
  });
}

/** The same for every order day of a replay; `pause` is called after each. */
export async function knownBook(
  world: World, past: StockPast, settings: Omit<RestockSettings, "as_of">, pause: (done: number, all: number) => Promise<void> = () => Promise.resolve(),
): Promise<KnownBook> {
  const days = orderDays(world), names = world.groups.map(({ interchange }) => interchange), book = new Map<number, KnownThen[]>();
  for (const day of days) {
    book.set(day, knownOn(day, names, past, settings));
    await pause(book.size, days.length);
  }
  return book;
}
