import type { BudgetQuestion } from "../../answers/budget/budget.ts";
import { moneyFor } from "../../answers/budget/bought-with.ts";
import type { Budget } from "../../answers/budget/budget.ts";
import type { Values } from "../../ui/url-state.ts";
import type { STOCK_FIELDS } from "./stock-filters.ts";

type StockValues = Values<typeof STOCK_FIELDS>;

const LEAD_FACTOR: Readonly<Record<string, number>> = { "as-known": 1, "half-longer": 1.5, twice: 2 };

/** What the address asks of a budget, beside the money, for which nothing has to be worked out anew. */
export const budgetQuestion = ({ lasting, delivery, held_up_by }: StockValues, as_of: string): BudgetQuestion => ({
  as_of, lasting: lasting === "rush" ? "rush" : "next order", lead_factor: LEAD_FACTOR[delivery] ?? 1, held_up_by: held_up_by === "needed" ? "parts it cannot do without" : "any part",
});

/** Share of jobs that a stock-up for the season begins with, and money to begin with where nothing else is to go by. */
const SEASON_SHARE = 0.9, SOME_MONEY = 100;

/** The money of the address; else what the week's order costs, or for the season what spares nine jobs in ten the wait. */
export function moneyOf({ budget }: Pick<StockValues, "budget">, answer: Budget, order_total: number): number {
  const asked = budget === "" ? NaN : Number(budget);
  if (asked >= 0 && asked < Infinity) return asked;
  if (answer.until !== null) return Math.ceil(moneyFor(answer, SEASON_SHARE) ?? SOME_MONEY);
  return order_total > 0 ? Math.ceil(order_total) : SOME_MONEY;
}

/** Past this share of the most that can be had, more money is the tail that nobody buys. */
const NEARLY_ALL = 0.995;

/** Right end of the curve, in money: where nearly all is had, and what is asked in any case. */
export function curveEnd({ fared }: Budget, money: number): number {
  const most = fared.at(-1)?.jobs_without_wait ?? 0, end = fared.find(({ jobs_without_wait }) => jobs_without_wait >= NEARLY_ALL * most)?.spend ?? 0;
  const wanted = Math.max(10, end * 1.1, money * 1.05), digit = 10 ** Math.floor(Math.log10(wanted)) / 2;
  return Math.ceil(wanted / digit) * digit;
}
