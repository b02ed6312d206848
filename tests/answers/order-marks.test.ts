import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { countingMarks, markedDeliveries, orderMarksText, readOrderMarks, withMarks } from "../../src/answers/stock/order-marks.ts";
import type { OrderMark } from "../../src/answers/stock/order-marks.ts";
import type { ShelfRow } from "../../src/answers/stock/chosen-part.ts";
import { restock } from "../../src/answers/stock/restock.ts";
import type { Engine } from "../../src/db/engine.ts";
import { fill, openShop } from "./shop.ts";

const row = (part_no: string, on_hand: number | null, on_order: number | null): ShelfRow => ({
  part_no, interchange: part_no, on_hand, on_order, refused: null, name: null, family: null, material: null, supplier: "ALD", unit_cost: 2, pack_qty: null,
  min_order_qty: null, due_on: null, essential: null, criticality: null, replaces: null, lead_days: 5, lead_days_sd: null, review_days: null, order_cost: null, min_order_value: null, listed_on_hand: null, listed_on_order: null,
});
const mark = (more: Partial<OrderMark> = {}): OrderMark =>
  ({ part_no: "A", supplier: "ALD", qty: 6, ordered_on: "2024-04-01", arrived_on: null, seen: { on_hand: 3, on_order: 1 }, ...more });
const SHELF = [row("A", 3, 1), row("B", 4, null), row("C", null, 0)], NONE = new Map<string, number>();
const marked = (marks: OrderMark[], as_of = "2024-04-09", under_way = NONE) => {
  const found = withMarks(SHELF, under_way, marks, as_of);
  return [found.shelf.map((one) => [one.on_hand, one.on_order]), Object.fromEntries(found.under_way)];
};

describe("withMarks", () => {
  test("puts what was sent on order, and on the shelf once it came", () => {
    expect(marked([mark()])).toEqual([[[3, 7], [4, null], [null, 0]], {}]);
    expect(marked([mark({ arrived_on: "2024-04-08" })])).toEqual([[[9, 1], [4, null], [null, 0]], {}]);
    expect(marked([mark({ arrived_on: "2024-04-08" })], "2024-04-05")).toEqual(marked([mark()], "2024-04-05"));
  });
  test("counts with the orders of the records where the parts list tells none, and leaves a shelf unknown that nobody counted", () => {
    const sent = mark({ part_no: "B", seen: { on_hand: 4, on_order: null } }), came = mark({ part_no: "C", arrived_on: "2024-04-08", seen: { on_hand: null, on_order: 0 } });
    expect(marked([sent], "2024-04-09", new Map([["B", 2]]))).toEqual([[[3, 1], [4, null], [null, 0]], { B: 8 }]);
    expect(marked([came])).toEqual([[[3, 1], [4, null], [null, 0]], {}]);
  });
  test("counts no mark once the parts list says something else, nor before its day, nor of a part that is gone", () => {
    const all = [mark({ seen: { on_hand: 2, on_order: 1 } }), mark({ ordered_on: "2024-05-01" }), mark({ part_no: "GONE" })];
    expect(countingMarks(SHELF, all, "2024-04-09")).toEqual([]);
    expect(withMarks(SHELF, NONE, all, "2024-04-09").shelf).toBe(SHELF);
  });
});

test("markedDeliveries counts the parts of one parcel once, and none that is still under way", () => {
  const came = mark({ arrived_on: "2024-04-08" });
  expect(markedDeliveries([came, { ...came, part_no: "B" }, mark({ part_no: "C" })], "2024-04-09", () => 5)).toEqual([{ supplier: "ALD", days: 7, quoted_days: 5 }]);
});

describe("readOrderMarks", () => {
  test("gives back what was kept, and names what cannot be read", () => {
    expect(readOrderMarks(orderMarksText([mark(), mark({ arrived_on: "2024-04-08" })]))).toEqual({ marks: [mark(), mark({ arrived_on: "2024-04-08" })], faults: [] });
    expect(readOrderMarks(JSON.stringify([{ ...mark(), qty: 0 }, mark()]))).toEqual({ marks: [mark()], faults: ["An order you marked was left out: the pieces of A must be more than 0."] });
    expect(readOrderMarks("[")).toMatchObject({ marks: [] });
  });
  test("refuses to keep pieces that are none and days that cannot be", () => {
    expect(() => orderMarksText([mark({ qty: -1 })])).toThrow(RangeError);
    expect(() => orderMarksText([mark({ arrived_on: "2024-03-31" })])).toThrow(new RangeError("orderMarksText: an order is marked wrongly: A cannot have come on 2024-03-31"));
  });
});

describe("restock with marks", () => {
  let engine: Engine;
  beforeAll(async () => { engine = await openShop(); });
  afterAll(() => engine.close());

  test("orders nothing twice: what is marked as sent is not advised again", async () => {
    await fill(engine, {
      tickets: Array.from({ length: 12 }, (_, i) => ({ ticket_no: `${i}`, received_on: `2023-${String(i + 1).padStart(2, "0")}-05`, finished_on: "2023-12-31", model: "W", reel_kind: "spinning", job: "full service" })),
      findings: Array.from({ length: 12 }, (_, i) => ({ ticket_no: `${i}`, position: "ar_clutch", part_no: "A", qty: 2, action: "replaced" })),
      parts: [{ part_no: "A", supplier: "ALD", unit_cost: 2, on_hand: 0, on_order: 0, essential: true }],
    });
    const of = async (marks: OrderMark[]) => (await restock(engine, { as_of: "2023-12-31", marks })).lines[0];
    const before = await of([]), qty = before?.order_qty ?? 0, sent = mark({ qty, ordered_on: "2023-12-31", seen: { on_hand: 0, on_order: 0 } });
    expect(qty).toBeGreaterThan(2);
    expect(await of([sent])).toMatchObject({ order_qty: 0, status: "enough", on_order: qty, on_hand: 0 });
    expect(await of([{ ...sent, arrived_on: "2023-12-31" }])).toMatchObject({ order_qty: 0, on_order: 0, on_hand: qty });
  });
});
