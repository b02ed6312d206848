import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ASSORTED } from "../../src/answers/interchange/interchange-groups.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import type { RestockLine } from "../../src/answers/stock/restock-line.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

let engine: Engine;
beforeAll(async () => { engine = await openShop(); });
afterAll(() => engine.close());

/** One hundred days of records: a ticket on the first and on the last day, the rest on day 50. */
const ticket = (ticket_no: string, received_on = "2024-02-19", more = {}) =>
  ({ ticket_no, received_on, finished_on: received_on, model: "Whinbeck 40", reel_kind: "spinning", job: "full service", outcome: "returned", ...more });
const finding = (ticket_no: string, part_no: string | null, qty: number, more = {}) =>
  ({ ticket_no, position: "line_roller_bearing", part_no, qty, action: "replaced", ...more });

const SHOP = {
  tickets: [
    ticket("1", "2024-01-01"), ticket("2"), ticket("3"), ticket("9", "2024-04-09"),
    ticket("8", "2024-04-01", { finished_on: null, outcome: "waiting" }),
  ],
  findings: [
    finding("2", "B-1", 6), finding("3", "B-OLD", 4), finding("8", "B-2", 2, { action: "wanted" }),
    finding("2", "S-1", 1), finding("3", "MIX-1", 3), finding("3", "GHOST", 5), finding("2", null, 7),
  ],
  parts: [
    { part_no: "B-1", name: "7x11x3 2RS", family: "ball bearing", size: "7x11x3", supplier: "ALD", unit_cost: 2.4, pack_qty: 5, min_order_qty: 5, on_hand: 3, on_order: 0, essential: true },
    { part_no: "B-2", name: "sealed", family: "ball bearing", size: "11x7x3", supplier: "FLI", unit_cost: 1.1, pack_qty: 10, min_order_qty: 20, on_hand: 1, replaces: "B-OLD" },
    { part_no: "S-1", name: "Shaft", supplier: "ALD", unit_cost: 9, on_hand: 2, essential: false },
    { part_no: "Z-1", name: "Never used", supplier: "ALD", unit_cost: 5, on_hand: 63 },
    { part_no: "U-1", name: "Not counted", supplier: "ALD", unit_cost: 5 },
    { part_no: "MIX-1", name: "Rollers, assorted", supplier: "ALD", on_hand: 4 },
  ],
  suppliers: [
    { supplier: "ALD", lead_days: 5, lead_days_sd: 1, min_order_value: 25, review_days: 7 },
    { supplier: "FLI", lead_days: 21, min_order_value: 60, order_cost: 8 },
  ],
  orders: [
    ...[30, 34, 38, 30, 38].map((days, i) => ({
      order_no: `F${i}`, supplier: "FLI", part_no: "B-2", qty: 20, ordered_on: "2024-01-01",
      arrived_on: new Date(Date.UTC(2024, 0, 1 + days)).toISOString().slice(0, 10),
    })),
    { order_no: "F0", supplier: "FLI", part_no: "S-1", qty: 1, ordered_on: "2024-01-01", arrived_on: "2024-01-31" },
    { order_no: "A1", supplier: "ALD", part_no: "S-1", qty: 3, ordered_on: "2024-04-05" },
  ],
};

describe("restock", () => {
  let lines: Map<string, RestockLine>;
  let answer: Awaited<ReturnType<typeof restock>>;
  beforeAll(async () => {
    await fill(engine, SHOP);
    answer = await restock(engine, { as_of: "2024-04-09" });
    lines = new Map(answer.lines.map((line) => [line.interchange, line]));
  });
  const line = (name: string) => lines.get(name) as RestockLine;

  test("pools use, shelf and waiting jobs over all numbers of the same part", () =>
    expect(line("bearing 7x11x3 sealed")).toMatchObject({ used: 12, wanted: 2, on_hand: 4, waiting: 2, part_nos: ["B-1", "B-2"], part_class: "A", target: 0.95 }));

  test("orders the cheapest number from its supplier, in that supplier's packs and smallest order", () => {
    const { part_no, supplier, order_qty, reorder_point, cost } = line("bearing 7x11x3 sealed");
    const short = (reorder_point ?? 0) - (4 + 0 - 2);
    expect([part_no, supplier, order_qty]).toEqual(["B-2", "FLI", Math.ceil(Math.max(short, 20) / 10) * 10]);
    expect(cost).toBeCloseTo((order_qty ?? 0) * 1.1, 10);
  });

  test("counts a delivery of several lines once, and takes observed days instead of the quote", () => {
    // 30, 34, 38, 30, 38: mean 34, squares 16 + 0 + 16 + 16 + 16 = 64, 64 / 4 = 16.
    expect(line("bearing 7x11x3 sealed").lead).toMatchObject({ days: 34, sd: 4, source: "observed", arrivals: 5, late: 5, quoted_days: 21 });
    expect(line("S-1").lead).toMatchObject({ days: 5, sd: 1, source: "quoted", arrivals: 0 });
  });

  test("protects over delivery and the supplier's own time between orders", () =>
    expect([line("bearing 7x11x3 sealed").protection_days, line("S-1").protection_days]).toEqual([34 + 14, 5 + 7]));

  test("takes orders under way where the parts list says nothing, and the parts list where it does", () => {
    expect([line("S-1").on_order, line("S-1").on_order_from]).toEqual([3, "orders"]);
    expect([line("bearing 7x11x3 sealed").on_order, line("bearing 7x11x3 sealed").on_order_from]).toEqual([0, "parts list"]);
  });

  test("says use as counted in the records: pieces, months, and a month's mean", () => {
    expect(line("S-1").months).toBeCloseTo(100 / 30.4375, 10);
    expect(line("bearing 7x11x3 sealed").demand_per_month).toBeCloseTo((12 / 100) * 30.4375, 10);
  });

  test("keeps nothing of what was never used, and says how much it could still be", () => {
    expect(line("Z-1")).toMatchObject({ status: "enough", used: 0, reorder_point: 0, order_qty: 0, cover_years: null });
    // Garwood upper limit of 0 events: 3.689 in 100 days.
    expect(line("Z-1").demand_per_month_high).toBeCloseTo((3.688879 / 100) * 30.4375, 5);
    expect(line("Z-1").reason).toBe("None used in 3 months, so at most about 13 a year; 63 on the shelf: nothing to order, and perhaps too many kept.");
  });

  test("refuses an assorted line and gives it no figures", () => {
    expect(line("MIX-1")).toMatchObject({ status: "refused", order_qty: null, reorder_point: null });
    expect(line("MIX-1").reason).toBe(`${ASSORTED} Used 3 in 3 months.`);
  });

  test("cannot tell without a shelf count or a catalogue row, and says what to do", () => {
    expect(line("U-1")).toMatchObject({ status: "cannot tell", order_qty: null, on_hand: null });
    expect(line("GHOST")).toMatchObject({ status: "cannot tell", part_no: null, used: 5 });
    expect(line("GHOST").reason).toMatch(/^You use about 1.5 a month, but it is not in your parts list: add it \(keep \d+\)\.$/);
  });

  test("counts what was used without a part number", () => expect(answer.unmapped_pieces).toBe(7));

  test("writes the reason with its numbers", () => {
    const { order_up_to, order_qty, reason } = line("bearing 7x11x3 sealed"), short = (order_up_to ?? 0) - 2;
    const rounding = order_qty === short ? "" : short < 20 ? ` (${short} short, the smallest order is 20)` : ` (${short} short, packs of 10)`;
    expect(reason).toBe(`You use about 3.7 a month; the next 48 days may take ${order_up_to ?? 0}; 4 on the shelf, 2 promised to waiting jobs, so order ${order_qty ?? 0}${rounding}.`);
  });

  test("names a number that comes sooner when the shelf will not last until the cheap one is here", () =>
    expect(line("bearing 7x11x3 sealed").notes).toContain("The shelf may not last 34 days: B-1 from ALD comes in 5."));

  test("makes one sheet a supplier and says whether the smallest order value is reached", () => {
    const sheet = answer.sheets.find((one) => one.supplier === "FLI");
    expect(sheet).toMatchObject({ order_cost: 8, min_order_value: 60, minimum_reached: (sheet?.total ?? 0) >= 60, unpriced: 0 });
    expect(sheet?.lines.map((one) => one.part_no)).toEqual(["B-2"]);
    expect(answer.sheets.every((one) => one.lines.every((row) => row.status === "order"))).toBe(true);
  });

  test("uses nothing later than the day it is for", async () => {
    const early = await restock(engine, { as_of: "2024-02-18" });
    expect(early.lines.every((one) => one.used === 0)).toBe(true);
    expect(early.lines.find((one) => one.part_no === "B-2")?.lead.arrivals).toBe(5);
  });

  test("refuses a day that is none, and a target of one", async () => {
    await expect(restock(engine, { as_of: "2024-02-30" })).rejects.toThrow(new RangeError("restock: as_of must be a day written YYYY-MM-DD, got 2024-02-30"));
    await expect(restock(engine, { as_of: "2024-02-03", targets: { A: 1, B: 0.9, C: 0.8 } })).rejects.toThrow(RangeError);
  });

  test("has an answer for empty records", async () => {
    await fill(engine, {});
    expect(await restock(engine, { as_of: "2024-02-03" })).toMatchObject({ lines: [], sheets: [], used_from: null, notes: ["No ticket yet: nothing is known of what is used."] });
  });
});
