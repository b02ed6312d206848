import { number, pieces } from "../wording.ts";
import type { RestockLine } from "../stock/restock-line.ts";
import type { PolicyScore, Replay } from "./replay.ts";
import type { ReplayWorld } from "./world-of.ts";

export const WHY_NOT: Readonly<Record<Exclude<Replay["status"], "ok">, string>> = {
  "too short": "Under a year and a half of records: a year is needed to learn from and half a year to try the advice on.",
  "no parts": "No job of the records needs a part with a shelf count and a price, so there is nothing to try the advice on.",
};

/** Jobs that waited and stock held; only ways of ordering for which both are known can be compared. */
interface Compared { readonly policy: string; readonly waited: number; readonly stock: number }

const comparable = ({ policy, waited, stock_value_mean }: PolicyScore): Compared[] =>
  (waited && stock_value_mean ? [{ policy, waited: waited.mean, stock: stock_value_mean.mean }] : []);
const whole = (value: number) => number(Math.round(value));
const told = ({ waited, stock }: Compared) => `${whole(waited)} waited, stock worth ${whole(stock)}`;
const beats = (one: Compared, other: Compared) => one.waited < other.waited && one.stock < other.stock;

function difference(own: Compared, habit: Compared): string {
  const jobs = Math.round(habit.waited) - Math.round(own.waited), stock = Math.round(habit.stock) - Math.round(own.stock);
  const waits = jobs === 0 ? "as many wait" : `${whole(Math.abs(jobs))} ${jobs > 0 ? "fewer" : "more"} wait`;
  return `${waits}, with ${stock === 0 ? "as much" : `${whole(Math.abs(stock))} ${stock > 0 ? "less" : "more"}`} on the shelf`;
}

function against(own: Compared, others: readonly Compared[], habit: Compared): string {
  const better = others.filter((one) => beats(one, habit)).sort((a, b) => a.stock - b.stock)[0];
  const sentence = `Against “${habit.policy}” (${told(habit)}): ${difference(own, habit)}`;
  if (beats(own, habit)) return `${sentence}, better on both counts.`;
  return better ? `${sentence}, so not better on both counts; “${better.policy}” is (${told(better)}).`
    : `${sentence}, so not better on both counts, and no other level of the advice is.`;
}

/** What the advice was worth against each habit; where a habit let fewer jobs wait or tied up less money, it says so. */
export function verdictOf(scores: readonly PolicyScore[]): string[] {
  const of = (kind: PolicyScore["kind"]) => scores.filter((score) => score.kind === kind).flatMap(comparable), [own, ...others] = of("advice");
  if (!own) return [WHY_NOT["no parts"]];
  const jobs = scores[0]?.jobs ?? 0;
  return [`Ordered as advised, ${whole(own.waited)} of ${number(jobs)} jobs would have waited for a part, with stock worth ${whole(own.stock)} on average.`,
    ...of("habit").map((habit) => against(own, others, habit))];
}

/** How the replay was done, and what it cannot tell. */
export function replayNotes({ world, unbalanced, lines }: ReplayWorld, all: readonly RestockLine[], draws: number): string[] {
  const left_out = all.length - lines.length;
  return [
    `Every way of ordering began with the shelf as it was then (told back from today's count), saw the same jobs, ordered on the same days and waited the same days for deliveries, drawn ${number(draws)} times from your suppliers' own. None knew anything that was not yet written on the day.`,
    "“Running out twice as often” is the same advice with every chance of running out doubled, for less money on the shelf. The min-max habit is given delivery times as they were observed, and use brought up to date on every order day: few benches do that much.",
    "Prices, packs and smallest orders are today's. An order under a supplier's smallest was filled up with what would run out next.",
    "Only jobs whose parts are all in the replay count. “What happened” is what is written on the tickets and orders: its waits are counted from the day a reel was opened, the others' from the day it came in.",
    ...(left_out > 0 ? [`${pieces(left_out, "line")} left out: assorted, without a shelf count or without a price.`] : []),
    ...(unbalanced > 0 ? [`For ${pieces(unbalanced, "part")} the books do not add up (more came in than was used or is there): an empty shelf was taken on the first day.`] : []),
    ...(world.suppliers.some(({ min_order_value }) => min_order_value === null) ? ["Suppliers without a smallest order took any order."] : []),
  ];
}
