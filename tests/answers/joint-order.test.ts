import { describe, expect, test } from "vitest";
import { freeFromText, readFreeFrom } from "../../src/answers/stock/free-from.ts";
import { jointOrder } from "../../src/answers/stock/joint-order.ts";
import type { OrderConditions } from "../../src/answers/stock/joint-order.ts";
import type { RestockLine } from "../../src/answers/stock/restock-line.ts";
import { line } from "../rooms/rows.ts";

const AS_OF = "2026-01-05";
const terms = (more: Partial<OrderConditions> = {}): OrderConditions => ({ order_cost: 6, min_order_value: null, free_from: null, as_of: AS_OF, ...more });
/** 36 used in a year of 365 days, delivery in 6 days sure, looked at every 14: two pieces expected in the protection time. */
const bearing = (more: Partial<RestockLine> = {}): RestockLine => line({
  used: 36, months: 12, demand_per_month: 3, belief: { shape: 36e6, rate: 365e6, clump: 1, unevenness: 0 }, lead: { ...line().lead, days: 6, sd: 0 },
  review_days: 14, protection_days: 20, season_factor: 1, demand_mean: 36 / 365 * 20, reorder_point: 4, order_up_to: 4, on_hand: 2, on_order: 0, waiting: 0,
  order_qty: 5, pack_qty: 5, min_order_qty: 5, unit_cost: 2, cost: 10, ...more,
});

describe("jointOrder", () => {
  test("counts the jobs that would wait: what is short before a later order comes, less what is short before this one does", () => {
    // One on the shelf; means 36/365 × 6 = .59 and × 20 = 1.97. Poisson: E(D − 1)+ = m − 1 + e^−m: .1456 and 1.1122.
    const { held_up, decision, sentence } = jointOrder([bearing({ on_hand: 1 })], [], terms());
    expect(held_up).toBeCloseTo((36 / 365) * 14 + Math.exp((-36 / 365) * 20) - Math.exp((-36 / 365) * 6), 6);
    expect([decision, sentence]).toEqual(["send now", "Send it now: waiting 14 days would hold up about 1 job."]);
  });

  test("a line that no job needs to be finished holds nobody up", () => expect(jointOrder([bearing({ part_class: "B", on_hand: 0 })], [], terms()).held_up).toBe(0));

  test("lets an order wait for the next day where nearly nobody would, and says what that saves", () => {
    const one = jointOrder([bearing({ on_hand: 5, reorder_point: 6 })], [], terms());
    expect(one).toMatchObject({ decision: "wait", next_on: "2026-01-19", fill: [] });
    expect(one.sentence).toBe("It can wait until 19 January 2026 and go together with what is needed then: fewer than one job in 10 orders would be held up, and one carriage of 6 is saved.");
    expect(jointOrder([bearing({ on_hand: 5, reorder_point: 6 })], [], terms({ order_cost: null })).decision).toBe("send now");
  });

  test("sends when jobs on the bench wait for more than is there and under way", () =>
    expect(jointOrder([bearing({ on_hand: 1, waiting: 2, part_class: "B" })], [], terms()).sentence).toBe("Send it now: jobs on the bench wait for it."));

  const next = bearing({ interchange: "next", name: "Next", on_hand: 5, reorder_point: 4, status: "enough", order_qty: 0, cost: 0, unit_cost: 6 });
  const later = bearing({ ...next, interchange: "later", name: "Later", on_hand: 9 });

  test("fills an urgent order up to the smallest with what runs low next", () => {
    const filled = jointOrder([bearing({ on_hand: 0 })], [later, next], terms({ min_order_value: 30 }));
    expect([filled.decision, filled.fill.map(({ line: { name } }) => name)]).toEqual(["fill up and send", ["Next"]]);
    expect(filled.total).toBe(10 + (filled.fill[0]?.cost ?? NaN));
    expect(filled.total).toBeGreaterThanOrEqual(30);
    expect(filled.sentence).toMatch(/^Add \d+ × Next and send it: waiting 14 days would hold up .*, and the smallest order is 30\.$/);
  });

  test("asks for a small order where nothing fills an urgent one up, and waits with one that is not urgent", () => {
    expect(jointOrder([bearing({ on_hand: 0 })], [], terms({ min_order_value: 300 })).sentence).toMatch(/^Ask for a small order: /);
    expect(jointOrder([bearing({ on_hand: 5, reorder_point: 6 })], [next], terms({ min_order_value: 30 }))).toMatchObject({ decision: "wait", fill: [] });
  });

  test("fills up to free carriage only while that saves more than the money lying on the shelf costs", () => {
    const free = jointOrder([bearing({ on_hand: 0 })], [next], terms({ free_from: 30 }));
    expect([free.decision, free.total >= 30]).toEqual(["fill up and send", true]);
    // The same with a line that lasts for years and a carriage of a tenth: its money for years is more.
    expect(jointOrder([bearing({ on_hand: 0 })], [bearing({ ...next, on_hand: 200, reorder_point: 190 })], terms({ free_from: 30, order_cost: 0.1 })).decision).toBe("send now");
  });

  test("sends what is carriage free by itself", () =>
    expect(jointOrder([bearing({ on_hand: 5, reorder_point: 6, cost: 50 })], [], terms({ free_from: 40 })).sentence).toBe("Send it now: carriage is free."));
});

describe("readFreeFrom", () => {
  test("gives back what was kept and names what is no money", () => {
    expect(readFreeFrom(freeFromText({ ALD: 80 }))).toEqual({ free_from: { ALD: 80 }, faults: [] });
    expect(readFreeFrom('{"ALD":-1,"RNG":60}')).toEqual({ free_from: { RNG: 60 }, faults: ["The value from which ALD sends free was left out: it is no sum of money."] });
    expect(readFreeFrom("[]").faults).toHaveLength(1);
    expect(() => freeFromText({ ALD: 0 })).toThrow(RangeError);
  });
});
