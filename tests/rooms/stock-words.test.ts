import { describe, expect, test } from "vitest";
import { orderFile, orderFileName, supplierFile } from "../../src/rooms/stock/order-file.ts";
import { plannedLines } from "../../src/rooms/stock/stock-filters.ts";
import { lineStory, orderSentence, sheetSentence } from "../../src/rooms/stock/stock-words.ts";
import { line, supplierSheet } from "./rows.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const enough = (rest: Parameters<typeof line>[0]) => line({ status: "enough", order_qty: 0, cost: 0, waiting: 0, ...rest });

describe("orderSentence", () => {
  test("gives lines, pieces, suppliers, money and the jobs that wait", () => {
    const sheets = [supplierSheet([line(), line({ waiting: 0, order_qty: 3, cost: 4 })]), supplierSheet([line({ supplier: "Zetfield" })], { supplier: "Zetfield" })];
    expect(plain(orderSentence({ sheets, total: 40 }, "cu", "en-GB")))
      .toBe("Order 3 lines, 27 pieces, from 2 suppliers for 40 cu. 2 of these lines have jobs on the bench waiting for them.");
  });

  test("says plainly when there is nothing to order", () => {
    expect(orderSentence({ sheets: [supplierSheet([])], total: 0 }, "cu", "en-GB")).toMatch(/^Nothing to order this week/);
  });
});

describe("sheetSentence", () => {
  test("says how far an order is short of the smallest one, the carriage and where the days are known from", () => {
    expect(plain(sheetSentence(supplierSheet([line()]), "cu", "en-GB"))).toBe(
      "1 line, 18.00 cu. 42 cu short of the smallest order of 60 cu. Carriage 9 cu. Takes about 34 days to arrive, from 22 deliveries of your own.");
  });

  test("does not claim a smallest order or a carriage that nobody wrote", () => {
    const sheet = supplierSheet([line()], { minimum_reached: null, min_order_value: null, short_by: null, order_cost: null });
    expect(plain(sheetSentence(sheet, "cu", "en-GB"))).toBe("1 line, 18.00 cu. No smallest order known. Takes about 34 days to arrive, from 22 deliveries of your own.");
  });
});

describe("lineStory", () => {
  test("tells of the numbers that are the same thing, the use, the days to cover and the levels", () => {
    const story = lineStory(line(), "cu", "en-GB").map(plain);
    expect(story).toContain("The same thing under 2 numbers, counted together: FL-7113, TT-7113.");
    expect(story).toContain("Used or wanted 144 pieces in 36 months, 3 of them wanted when there were none.");
    expect(story).toContain("Until the order after this one arrives 48 days pass, 14 days of them between two orders: 6.5 pieces expected, not more than 11 in 19 cases of 20.");
    expect(story).toContain("On the shelf 2, under way 0, jobs waiting for 1; order below 11, up to 13.");
  });

  test("leaves unknown counts as dashes, never as nought", () => {
    expect(lineStory(line({ on_hand: null, reorder_point: null }), "cu", "en-GB").join(" ")).toContain("On the shelf –, under way 0, jobs waiting for 1; order below –");
  });
});

describe("plannedLines", () => {
  const lines = [line(), enough({ supplier: "Zetfield", family: "seal" }), line({ status: "refused" }), line({ status: "cannot tell" })];
  const values = { show: "all", supplier: "", family: "", line: "" };
  test("never holds assorted lines and follows the filters", () => {
    expect(plannedLines(lines, values)).toHaveLength(3);
    expect(plannedLines(lines, { ...values, show: "order" })).toHaveLength(1);
    expect(plannedLines(lines, { ...values, supplier: "Zetfield", family: "seal" })).toHaveLength(1);
  });
});

describe("orderFile", () => {
  test("writes one line a part with unrounded numbers, blanks for what is missing and no formula", () => {
    const [heads, row] = orderFile([line({ name: "=HYPERLINK(1)", unit_cost: 1.525, cost: null })]).split("\r\n");
    expect(heads).toBe("part_no,interchange,name,supplier,order_qty,pack_qty,unit_cost,cost,on_hand,on_order,demand_mean,demand_p95,reorder_point,order_up_to,reason");
    expect(row).toMatch(/^FL-7113,bearing 7x11x3,'=HYPERLINK\(1\),Far Lantern,12,4,1\.525,,2,0,6\.5,11,11,13,/);
  });

  test("tells a supplier what to send and nothing of the shelf, the use or the reasons", () =>
    expect(supplierFile([line()]).split("\r\n").slice(0, 2)).toEqual(["part_no,name,supplier,order_qty,pack_qty,unit_cost,cost", "FL-7113,Bearing 7×11×3,Far Lantern,12,4,1.5,18"]));

  test("makes a name that every disk takes", () => {
    expect(orderFileName("Far Lantern / Import", "2025-12-31")).toBe("order-far-lantern-import-2025-12-31.csv");
    expect(orderFileName("???", "2025-12-31")).toBe("order-supplier-2025-12-31.csv");
  });
});
