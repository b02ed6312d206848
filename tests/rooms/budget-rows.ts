import type { Budget, BudgetGroup } from "../../src/answers/budget/budget.ts";
import type { Fared } from "../../src/answers/budget/followed.ts";
import type { PolicyScore } from "../../src/answers/replay/replay.ts";

const group = (interchange: string, name: string, unit_cost: number): BudgetGroup => ({
  interchange, part_no: interchange.toUpperCase(), name, supplier: "Zetfield", part_class: "A", unit_cost, pack_qty: 1, min_order_qty: 1, position: 0, lead_days: 24, lead_sd: 9, review_days: 14,
});
const fared = (spend: number, waiting: number, low: number, high: number): Fared => ({ spend, jobs_without_wait: 1 - waiting / 50, lines_filled: 1 - waiting / 80, waiting, waiting_low: low, waiting_high: high });

/** Fifty jobs ahead: a pawl for 8 spares five of eight the wait, clutch and spring together for 12 two more. */
export const BUDGET: Budget = {
  question: { as_of: "2026-01-05", lasting: "next order", lead_factor: 1, held_up_by: "any part" },
  groups: [group("lwp", "Level-wind pawl", 1.6), group("arc", "Clutch", 10), group("spr", "Clutch spring", 2)], left_out: { refused: 0, uncounted: 0, unpriced: 0, can_do_without: 0 },
  steps: [{ bought: [{ group: 0, pieces: 5, cost: 8 }], jobs: 5 }, { bought: [{ group: 1, pieces: 1, cost: 10 }, { group: 2, pieces: 1, cost: 2 }], jobs: 2 }],
  fared: [fared(0, 8, 3, 14), fared(8, 3, 0, 6), fared(20, 1, 0, 2)], jobs: 50, scenarios: 2000, checked_on: 1000, years: 3, rush: null, from: "2026-01-06", until: null, notes: ["A note."],
};

/** Fifty of a hundred jobs' worth of scores: the advice at two levels, a habit, and what happened. */
export const score = (policy: string, kind: PolicyScore["kind"], waited: number, stock: number, rest: Partial<PolicyScore> = {}): PolicyScore => ({
  policy, kind, jobs: 1269, waited: { mean: waited, low: waited - 8, high: waited + 10 }, jobs_without_wait: 1 - waited / 1269, wait_days: 9,
  stock_value_mean: { mean: stock, low: stock - 7, high: stock + 7 }, orders: 150, spend: 6935, carriage: 1090, dead_stock: 99.8, ...rest,
});
export const SCORES: readonly PolicyScore[] = [
  score("as advised", "advice", 19, 1066), score("advised, running out half as often", "advice", 9, 1249), score("advised, running out twice as often", "advice", 42, 908),
  score("advised, running out three times as often", "advice", 71, 823), score("one when one goes", "habit", 33, 1375), score("min-max from last year's mean", "habit", 82, 882),
  score("what happened", "happened", 56, 1053, { waited: { mean: 56, low: 56, high: 56 }, stock_value_mean: { mean: 1053, low: 1053, high: 1053 }, carriage: null, dead_stock: null }),
];
