import { describe, expect, test } from "vitest";
import { boughtWith, moneyFor } from "../../src/answers/budget/bought-with.ts";
import { budgetOf } from "../../src/answers/budget/budget-of.ts";
import { BUDGET_DEFAULTS } from "../../src/answers/budget/budget.ts";
import type { BudgetGroup, BudgetRecords } from "../../src/answers/budget/budget.ts";
import { buyingOrder } from "../../src/answers/budget/buying-order.ts";
import { followed } from "../../src/answers/budget/followed.ts";
import { costOf, piecesOf, rungFor } from "../../src/answers/budget/ladder.ts";
import { NeedsList } from "../../src/answers/budget/needs.ts";
import { dayAfter } from "../../src/answers/days.ts";
import { drawPoisson } from "../../src/stats/draws.ts";
import { seededRandom } from "../../src/stats/random.ts";
import marginal from "../reference/09-inventory/marginal-analysis/expected.json";

const plain = (unit_cost: number, position = 0) => ({ position, first: 1, pack: 1, unit_cost });

describe("buyingOrder", () => {
  test("buys item by item as marginal analysis does where every job needs one piece of one item", async () => {
    // reference/09-inventory/marginal-analysis (Sherbrooke 1968, Operations Research 16:122-141; exact Poisson sums in R).
    // Pieces handed over at once are E min(D, S) = mean − expected backorders, so both rules rank alike. The path is followed to
    // step 14; later steps differ by less than sampling error.
    const { means, unit_costs, result } = marginal.values, random = seededRandom(3), list = new NeedsList(), futures = 20_000;
    for (let future = 0; future < futures; future += 1) {
      means.forEach((mean, item) => {
        const demand = drawPoisson(random, mean);
        for (let level = 1; level <= demand; level += 1) { list.need(item, level); list.endJob(); }
      });
      list.endScenario();
    }
    const ladders = unit_costs.map((cost) => plain(cost)), order = await buyingOrder(list.list(), ladders), fared = followed(list.list(), ladders, order);
    result.path.slice(0, 14).forEach((step, i) => {
      expect([order[i]?.groups, fared[i + 1]?.spend]).toEqual([[step.item - 1], step.spend]);
      expect(Math.abs((fared[i + 1]?.waiting ?? NaN) - step.total_ebo)).toBeLessThan(0.05);
    });
  });

  test("buys two parts at once when neither helps a job without the other, where one at a time would stop", async () => {
    // Eight futures: in six a job lacks clutch and spring, in two a job lacks a seal that costs as much as both.
    const list = new NeedsList();
    for (let future = 0; future < 8; future += 1) {
      if (future < 6) { list.need(0, 1); list.need(1, 1); } else list.need(2, 1);
      list.endJob();
      list.endScenario();
    }
    const ladders = [plain(10), plain(2), plain(12)], order = await buyingOrder(list.list(), ladders);
    expect(order).toEqual([{ groups: [0, 1], to: [1, 1], cost: 12, jobs: 6 }, { groups: [2], to: [1], cost: 12, jobs: 2 }]);
    expect(followed(list.list(), ladders, order).map(({ jobs_without_wait, lines_filled }) => [jobs_without_wait, lines_filled]))
      .toEqual([[0, 0], [0.75, expect.closeTo(12 / 14, 12)], [1, 1]]);
  });

  test("a job that lacks nothing of what is there already counts as served before any money is spent", async () => {
    const list = new NeedsList();
    list.need(0, 2); list.endJob(); list.need(0, 3); list.endJob(); list.endScenario();
    const fared = followed(list.list(), [plain(5, 2)], await buyingOrder(list.list(), [plain(5, 2)]));
    expect(fared.map(({ spend, jobs_without_wait, waiting }) => [spend, jobs_without_wait, waiting])).toEqual([[0, 0.5, 1], [5, 1, 0]]);
  });
});

describe("ladder", () => {
  // Two there, the smallest order 20, packs of 10.
  const ladder = { position: 2, first: 20, pack: 10, unit_cost: 1.1 };
  test("the first rung is the smallest order, the others a pack", () => {
    expect([2, 3, 22, 23, 32, 33].map((level) => rungFor(ladder, level))).toEqual([0, 1, 1, 2, 2, 3]);
    expect([0, 1, 2, 3].map((rungs) => piecesOf(ladder, rungs))).toEqual([0, 20, 30, 40]);
    expect(costOf(ladder, 1, 3)).toBeCloseTo(22, 10);
  });
  test("what open jobs wait for has to be bought first", () => expect(rungFor({ ...ladder, position: -25 }, 1)).toBe(2));
});

const group = (interchange: string, unit_cost: number, position: number): BudgetGroup => ({
  interchange, part_no: interchange, name: null, supplier: "ALD", part_class: "A", unit_cost, pack_qty: 1, min_order_qty: 1, position, lead_days: 7, lead_sd: 2, review_days: 7,
});
const from = "2024-01-01", days = Array.from({ length: 400 }, (_, i) => dayAfter(from, i));
/** A job every second day needs a seal; every fourth also a clutch. */
const records = (more: Partial<BudgetRecords> = {}): BudgetRecords => ({
  question: { ...BUDGET_DEFAULTS, as_of: days.at(-1) ?? "" }, groups: [group("clutch", 10, 1), group("seal", 1, 4)], left_out: { refused: 0, uncounted: 0, unpriced: 0, can_do_without: 0 },
  parts: days.flatMap((day, i) => (i % 2 ? [] : [...(i % 4 ? [] : [{ ticket_no: `${i}`, day, interchange: "clutch", pieces: 1 }]), { ticket_no: `${i}`, day, interchange: "seal", pieces: 1 }])),
  intake: days.map((day) => ({ day, tickets: 1 })), ...more,
});

describe("budgetOf", () => {
  test("more money never leaves more jobs waiting, and its list holds the list of less money", async () => {
    const answer = await budgetOf(records());
    expect(answer.fared.length).toBe(answer.steps.length + 1);
    answer.fared.slice(1).forEach((one, i) => {
      expect(one.spend).toBeGreaterThan(answer.fared[i]?.spend ?? Infinity);
      expect(one.jobs_without_wait).toBeGreaterThanOrEqual(answer.fared[i]?.jobs_without_wait ?? Infinity);
    });
    const pieces = (budget: number) => boughtWith(answer, budget)?.lines.map((line) => [line.group.interchange, line.pieces] as const) ?? [];
    const more = new Map(pieces(60));
    expect(pieces(25).length).toBeGreaterThan(0);
    for (const [name, count] of pieces(25)) expect(more.get(name) ?? 0).toBeGreaterThanOrEqual(count);
  });

  test("the list costs no more than the money, and says what the next step would cost", async () => {
    const answer = await budgetOf(records()), bought = boughtWith(answer, 25);
    const spent = bought?.lines.reduce((sum, line) => sum + line.cost, 0) ?? NaN;
    expect(spent).toBeLessThanOrEqual(25);
    expect(spent).toBeCloseTo(bought?.spend ?? NaN, 6);
    expect((bought?.spend ?? 0) + (bought?.next ?? 0)).toBeGreaterThan(25);
    expect(boughtWith(answer, 1e9)?.next).toBeNull();
  });

  test("about as many jobs lie ahead as came in so many days: a job every second day, two weeks of delivery and review", async () => {
    // Lead 7 ± 2 and 7 days between orders, rounded up to whole days: 14.5 days, 7.2 jobs.
    expect((await budgetOf(records())).jobs).toBeCloseTo(7.25, 0);
  });

  test("longer delivery leaves more jobs waiting for the same money", async () => {
    const slow = { question: { ...records().question, lead_factor: 2 } }, share = async (given: BudgetRecords) => (await budgetOf(given)).fared[0]?.waiting ?? NaN;
    expect(await share(records(slow))).toBeGreaterThan(await share(records()));
  });

  test("says that nothing can be chosen where nothing is known of jobs, and gives no figure", async () => {
    const answer = await budgetOf(records({ parts: [] }));
    expect([answer.fared, answer.steps, boughtWith(answer, 100), moneyFor(answer, 0.9)]).toEqual([[], [], null, null]);
    expect(answer.notes).toEqual(["Nothing is known yet of which parts jobs need, or no part on the list has a count and a price: no choice can be made."]);
  });

  test("a cancel ends it with the signal's reason", async () => {
    const cancel = new AbortController(), reason = new Error("enough");
    const running = budgetOf(records({ question: { ...records().question, lead_factor: 20 } }), { signal: cancel.signal, report: () => cancel.abort(reason) });
    await expect(running).rejects.toBe(reason);
  });
});

test("moneyFor gives the least money for a share of jobs, and null where no money reaches it", async () => {
  const answer = await budgetOf(records()), least = moneyFor(answer, 0.9) ?? NaN;
  expect(boughtWith(answer, least)?.fared.jobs_without_wait).toBeGreaterThanOrEqual(0.9);
  expect(boughtWith(answer, least - 0.01)?.fared.jobs_without_wait).toBeLessThan(0.9);
  expect(moneyFor(answer, 1.01)).toBeNull();
});
