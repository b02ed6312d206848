import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { askLastBuys, lastBuys } from "../../src/answers/stock/last-buy.ts";
import { restock, RESTOCK_DEFAULTS } from "../../src/answers/stock/restock.ts";
import { shelfMoney } from "../../src/answers/stock/shelf-money.ts";
import { elsewhereWords, suppliers } from "../../src/answers/stock/suppliers.ts";
import type { Engine } from "../../src/db/engine.ts";
import { line } from "../rooms/rows.ts";
import { openDemo } from "./demo-shop.ts";
import { fill, openShop } from "./shop.ts";

const belief = (shape: number, rate: number) => ({ shape, rate, clump: 1, unevenness: 0.05 });

describe("shelfMoney", () => {
  const live = line({ interchange: "live", status: "enough", on_hand: 10, unit_cost: 2.5, used: 40, cover_years: 0.5, family: "seal" });
  const dead = line({ interchange: "dead", status: "enough", on_hand: 63, unit_cost: 1.6, used: 3, cover_years: 42, belief: belief(3, 730.5), family: "ball bearing" });
  const never = line({ interchange: "never", status: "enough", on_hand: 4, unit_cost: null, used: 0, wanted: 0, cover_years: null, belief: belief(0.5, 730.5) });
  const money = shelfMoney([live, dead, never, line({ interchange: "uncounted", on_hand: null, status: "cannot tell" }), line({ interchange: "mixed", status: "refused", on_hand: 9, unit_cost: 1, family: "seal" })]);

  test("adds up what is counted and has a price, and says how much is not", () => {
    expect([money.value, money.lines, money.uncounted, money.unpriced]).toEqual([25 + 100.8 + 9, 3, 1, 1]);
    expect(money.families).toEqual([{ family: "ball bearing", value: 100.8, lines: 1 }, { family: "seal", value: 34, lines: 2 }]);
  });

  test("finds what lasts for years or was not used, dearest first, and never calls an assorted drawer dead", () =>
    expect([money.dead.map((one) => one.line.interchange), money.dead_value]).toEqual([["dead", "never"], 100.8]));

  test("gives the chance that one is used within two years, and what two years will not take", () => {
    // Gamma-Poisson, as much time ahead as behind: no use in two years with chance (1/2)^3 and (1/2)^0.5.
    expect(money.dead[0]?.chance_used).toBeCloseTo(1 - 0.125, 12);
    expect(money.dead[1]?.chance_used).toBeCloseTo(1 - Math.SQRT1_2, 12);
    // Negative binomial of mean 3 and size 3: .125 .1875 .1875 .1563 .1172 .0820 .0547 .0352 …; up to 7 .9453, up to 8 .9673.
    expect([money.dead[0]?.spare, money.spare_value]).toEqual([55, 88]);
    expect(money.dead[0]?.sentence).toBe("63 on the shelf, enough for about 42 years; the chance that one is used within two years is about 88 in 100. 55 of them could go: two years will hardly take more than 8.");
  });
});

describe("lastBuys", () => {
  const use = { maker: "Wexmoor", model: "Piddock 150", discontinued_on: "2024-12-31", tickets_now: 20, tickets_before: 25, interchange: "own", pieces: 8, all_pieces: 10 };
  const own = line({ interchange: "own", on_hand: 1, on_order: 0, waiting: 0, pack_qty: 1, min_order_qty: 0, target: 0.9 });

  test("lets the use shrink as the reels do and buys what five years may take", () => {
    const [buy] = lastBuys([use], [own]), left = (20 + 4.5) / 30;
    expect(buy?.expected).toBeCloseTo((8.5 / 2) * (left + left ** 2 + left ** 3 + left ** 4 + left ** 5), 12);
    expect(buy?.qty).toBe((buy?.level ?? NaN) - 1);
    expect(buy?.sentence).toMatch(/^The Piddock 150 is not made since 2024-12-31; 20 reels came in the last year, 25 the year before\. It took about 4 a year; 5 years may take \d+; 1 on the shelf or under way: buy \d+ while it can be had\.$/);
  });

  test("never believes that reels of an ended model become more, and leaves parts that others take as well to them", () => {
    expect(lastBuys([{ ...use, tickets_now: 90 }], [own])[0]?.expected).toBeCloseTo((8.5 / 2) * 5, 12);
    expect(lastBuys([{ ...use, pieces: 7 }], [own])).toEqual([]);
  });

  test("asks for a count where nobody counted", () => expect(lastBuys([use], [line({ ...own, on_hand: null })])[0]).toMatchObject({ qty: null }));
});

describe("asked of records", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openShop(); });
  afterAll(() => engine.close());
  const order = (order_no: string, ordered_on: string, arrived_on: string | null, more = {}) => ({ order_no, supplier: "ALD", part_no: "A", qty: 10, unit_cost: 2, ordered_on, arrived_on, ...more });

  test("a supplier's days, orders, money, and the same part elsewhere", async () => {
    await fill(engine, {
      parts: [
        { part_no: "A", family: "ball bearing", size: "7x11x3", name: "sealed", supplier: "ALD", unit_cost: 2 },
        { part_no: "B", family: "ball bearing", size: "7x11x3", name: "sealed", supplier: "FLI", unit_cost: 1, lead_days: 21 },
      ],
      suppliers: [{ supplier: "ALD", lead_days: 5, order_cost: 6, min_order_value: 25 }],
      orders: [
        order("1", "2024-01-01", "2024-01-05"), order("1", "2024-01-01", "2024-01-05", { part_no: "B", unit_cost: null, qty: 3 }), order("2", "2024-02-01", "2024-02-07"),
        order("3", "2024-03-01", "2024-03-09"), order("4", "2024-04-01", "2024-04-11"), order("5", "2024-05-01", "2024-05-13"), order("0", "2022-01-01", null),
      ],
    });
    const [ald, fli] = await suppliers(engine, { ...RESTOCK_DEFAULTS, as_of: "2024-06-01", free_from: { ALD: 80 } });
    // 4, 6, 8, 10, 12 days: mean 8; four in five within 10.4; four of five over the quoted 5.
    expect(ald).toMatchObject({ supplier: "ALD", four_in_five: 10.4, parts: 1, order_cost: 6, min_order_value: 25, free_from: 80, lead: { days: 8, late: 4 } });
    expect(ald?.bought).toMatchObject({ orders: 5, lines: 6, spend: 5 * 20 + 3 * 1, unpriced: 0, last_on: "2024-05-01" });
    expect(ald?.elsewhere).toEqual([{ interchange: "bearing 7x11x3 sealed", here: "A", there: "B", supplier: "FLI", price_ratio: 0.5, days_more: 13 }]);
    expect(ald?.elsewhere.map(elsewhereWords)).toEqual(["B from FLI: 0.5 times the price, 13 days later."]);
    expect([ald?.sentence, fli?.sentence]).toEqual([
      "Takes 8 days on average, 5 were quoted; four in five came within 10. 4 of 5 came later than quoted.",
      "Quotes 21 days; 0 deliveries on record, from 5 on they count instead.",
    ]);
  });
});

test("the demo's dead money is the 7x13x4 bearing, and its ended model's own parts are told for a last buy", async () => {
  const engine = await openDemo();
  try {
    const { lines } = await restock(engine, { as_of: "2026-01-05" }), { dead } = shelfMoney(lines);
    // PT14: 63 pieces of 7x13x4 at 1.60.
    expect(dead.find((one) => one.line.interchange === "bearing 7x13x4 sealed")).toMatchObject({ value: 100.8 });
    expect(dead[0]?.line.interchange).toBe("bearing 7x13x4 sealed");
    const buys = await askLastBuys(engine, "2026-01-05", lines);
    expect(buys.every((one) => one.discontinued_on === "2024-12-31" && one.expected > 0)).toBe(true);
  } finally {
    await engine.close();
  }
}, 60_000);
