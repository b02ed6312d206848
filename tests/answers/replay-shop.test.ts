import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { filledUp } from "../../src/answers/replay/fill-up.ts";
import { oneWhenOneGoes } from "../../src/answers/replay/rules.ts";
import { runShop } from "../../src/answers/replay/run-shop.ts";
import type { ReplayGroup, ReplaySupplier, Rule, World } from "../../src/answers/replay/world.ts";
import { seededRandom } from "../../src/stats/random.ts";

const group = (more: Partial<ReplayGroup> = {}): ReplayGroup => ({ interchange: "a", supplier: "ALD", unit_cost: 2, pack_qty: 1, min_order_qty: 0, opening: 1, ...more });
const supplier = (more: Partial<ReplaySupplier> = {}): ReplaySupplier => ({ supplier: "ALD", review_days: 7, order_cost: 6, min_order_value: null, ...more });
const job = (day: number, ...parts: [number, number][]) => ({ day, parts, counts: true });
const world = (more: Partial<World>): World => ({ first: 0, last: 20, groups: [group()], suppliers: [supplier()], jobs: [], coming: [], ...more });
const fixed = (days: number) => () => days, unused = () => 0;
const never: Rule = () => null, upTo = (to: number): Rule => () => ({ at: to - 1, to });

describe("runShop", () => {
  test("by hand: one piece there, the second job waits for the order of day 7, which takes 5 days", () => {
    // Day 2 takes the piece; day 3 waits; day 7 orders 2 (one for the job, one for the shelf); day 12 both come: 9 days waited.
    // On the shelf: days 0 and 1 one piece, days 2 to 11 none, days 12 to 20 one: 11 days of 21, worth 2 each.
    const outcome = runShop(world({ jobs: [job(2, [0, 1]), job(3, [0, 1])] }), { rule: upTo(1), use: unused }, fixed(5));
    expect(outcome).toMatchObject({ jobs: 2, waited: 1, wait_days: 9, never_came: 0, orders: 1, spend: 4, carriage: 6, on_hand: [1], ordered: [2], arrived: [2], handed_out: [2] });
    expect(outcome.stock_value_mean).toBeCloseTo((11 * 2) / 21, 12);
  });

  test("a job waits for its last missing part, and keeps the one that is there", () => {
    // Parts 0 is there, part 1 never: the job waits to the end (day 20, 15 days), and the second job finds part 0 gone.
    const outcome = runShop(world({ groups: [group(), group({ interchange: "b", opening: 0 })], jobs: [job(5, [0, 1], [1, 1]), job(6, [0, 1])] }), { rule: never, use: unused }, fixed(5));
    expect(outcome).toMatchObject({ waited: 2, never_came: 2, wait_days: 15 + 14, on_hand: [0, 0] });
  });

  test("jobs are served in the order they came in", () => {
    const outcome = runShop(world({ jobs: [job(1, [0, 3]), job(2, [0, 1])], coming: [{ day: 4, group: 0, pieces: 2 }, { day: 9, group: 0, pieces: 1 }] }), { rule: never, use: unused }, fixed(5));
    // The first lacks 2, which come on day 4; the second gets the piece of day 9: 3 + 7 days.
    expect(outcome).toMatchObject({ waited: 2, wait_days: 10, never_came: 0 });
  });

  test("jobs that need something outside the replay take their parts and are not counted", () => {
    const outcome = runShop(world({ jobs: [{ ...job(1, [0, 1]), counts: false }, job(2, [0, 1])] }), { rule: never, use: unused }, fixed(5));
    expect(outcome).toMatchObject({ jobs: 1, waited: 1 });
  });

  test("orders in full packs and at least the smallest quantity", () =>
    expect(runShop(world({ groups: [group({ opening: 0, pack_qty: 10, min_order_qty: 20 })] }), { rule: upTo(3), use: unused }, fixed(5)).ordered).toEqual([20]));

  test("one when one goes buys back exactly what was taken", () => {
    const there = world({ last: 60, groups: [group({ opening: 5 })], jobs: [job(1, [0, 2]), job(9, [0, 1]), job(20, [0, 3])] });
    expect(runShop(there, { rule: oneWhenOneGoes(there), use: unused }, fixed(5))).toMatchObject({ ordered: [6], on_hand: [5], waited: 0 });
  });

  test("an order under the supplier's smallest value is filled up with what would run out next", () => {
    // Asked for 2 of money, wanted 8: three pieces more. Part 1 lasts 4 / 0.5 = 8 days and goes in first, then lasts 10; part 2 lasts
    // 17 / 2 = 8.5 days, then 9, and goes in twice.
    const groups = [group(), group({ interchange: "b" }), group({ interchange: "c" })];
    const fillers = [{ group: 1, terms: group(), position: 4, use: 0.5 }, { group: 2, terms: group(), position: 17, use: 2 }];
    expect(filledUp([{ group: 0, pieces: 1 }], 8, fillers, groups)).toEqual([{ group: 0, pieces: 1 }, { group: 1, pieces: 1 }, { group: 2, pieces: 2 }]);
  });

  test("stays under the smallest value where nothing else of the supplier's is used", () =>
    expect(filledUp([{ group: 0, pieces: 1 }], 8, [], [group()])).toEqual([{ group: 0, pieces: 1 }]));
});

/** Any shop: up to 4 groups of 2 suppliers, 120 days, jobs and goods under way at random, any levels. */
function anyShop(seed: number): { there: World; rule: Rule } {
  const random = seededRandom(seed), whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1));
  const groups = Array.from({ length: whole(1, 4) }, (_, i) => group({ interchange: `${i}`, supplier: whole(0, 1) ? "ALD" : "FLI", unit_cost: whole(0, 9), pack_qty: whole(1, 5), min_order_qty: whole(0, 7), opening: whole(0, 6) }));
  const parts = () => groups.flatMap((_, i): [number, number][] => (random() < 0.4 ? [[i, whole(1, 3)]] : []));
  const jobs = Array.from({ length: whole(0, 90) }, () => job(whole(0, 119), ...parts())).filter((one) => one.parts.length > 0).sort((a, b) => a.day - b.day);
  const coming = Array.from({ length: whole(0, 3) }, () => ({ day: whole(0, 119), group: whole(0, groups.length - 1), pieces: whole(1, 9) }));
  const to = groups.map(() => whole(0, 12));
  const suppliers = [supplier({ review_days: whole(1, 20), min_order_value: whole(0, 30) }), supplier({ supplier: "FLI", review_days: whole(1, 30) })];
  return { there: world({ last: 119, groups, jobs, coming, suppliers }), rule: (_day, i) => ({ at: (to[i] ?? 0) - 1, to: to[i] ?? 0 }) };
}

test("the books add up in any shop: opening and arrived are on the shelf or handed out, ordered has arrived or is under way", () => {
  fc.assert(fc.property(fc.nat(1_000_000), fc.integer({ min: 1, max: 40 }), (seed, days) => {
    const { there, rule } = anyShop(seed), { on_hand, on_order, ordered, arrived, handed_out } = runShop(there, { rule, use: () => 0.1 }, fixed(days));
    there.groups.forEach(({ opening }, i) => {
      expect(opening + (arrived[i] ?? NaN)).toBe((on_hand[i] ?? NaN) + (handed_out[i] ?? NaN));
      expect(ordered[i]).toBe((arrived[i] ?? NaN) + (on_order[i] ?? NaN));
      expect(on_hand[i]).toBeGreaterThanOrEqual(0);
      expect(handed_out[i]).toBeLessThanOrEqual(there.jobs.reduce((sum, one) => sum + one.parts.reduce((all, [at, pieces]) => (at === i ? all + pieces : all), 0), 0));
    });
  }), { numRuns: 300 });
});

test("a longer delivery never lets a job in any shop with one order a day and no packs be ready sooner", () => {
  fc.assert(fc.property(fc.nat(1_000_000), fc.integer({ min: 1, max: 20 }), (seed, days) => {
    const { there, rule } = anyShop(seed), plain = { ...there, groups: there.groups.map((one) => ({ ...one, pack_qty: 1, min_order_qty: 0 })), suppliers: there.suppliers.map((one) => ({ ...one, min_order_value: null })) };
    const wait = (delivery: number) => runShop(plain, { rule, use: unused }, fixed(delivery)).wait_days;
    expect(wait(days + 3)).toBeGreaterThanOrEqual(wait(days));
  }), { numRuns: 100 });
});
