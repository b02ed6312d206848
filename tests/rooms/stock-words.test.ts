import { describe, expect, test } from "vitest";
import { orderFile, orderFileName } from "../../src/rooms/stock/order-file.ts";
import { plannedLines } from "../../src/rooms/stock/stock-filters.ts";
import { asleep, asleepSentence, lineStory, nextLow, orderSentence, sheetSentence } from "../../src/rooms/stock/stock-words.ts";
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

describe("nextLow", () => {
  const lines = [
    enough({ name: "Far off", on_hand: 400 }), enough({ name: "Soon", on_hand: 15, on_order: 0 }), enough({ name: "Other supplier's", supplier: "Zetfield", on_hand: 12 }),
    enough({ name: "Uncounted", on_hand: null }), enough({ name: "Unused", demand_per_month: 0, on_hand: 12 }), enough({ name: "Next", on_hand: 20 }),
  ];
  test("names what of the same supplier falls to its reorder point within a year, soonest first", () => {
    // (15 − 11) / 4.1 = 0.98 months; (20 − 11) / 4.1 = 2.2 months; (400 − 11) / 4.1 is years away
    expect(nextLow(lines, supplierSheet([line()]), "en-GB"))
      .toBe("To fill the order up, next to run low there: Soon (within a month), Next (in about 2 months).");
  });

  test("says nothing when nothing of that supplier runs low within a year", () => {
    expect(nextLow(lines.slice(0, 1), supplierSheet([line()]), "en-GB")).toBe("");
  });
});

describe("asleep", () => {
  const lines = [
    line({ name: "Moves", cover_years: 1 }), line({ name: "7×13×4", on_hand: 63, unit_cost: 1.6, cover_years: 42 }),
    line({ name: "Never used", on_hand: 5, unit_cost: 40, used: 0, wanted: 0, cover_years: null }),
    line({ name: "Assorted", status: "refused", on_hand: 90, cover_years: 30 }), line({ name: "Empty drawer", on_hand: 0, used: 0, wanted: 0, cover_years: null }),
  ];
  test("lists what lasts five years or was never used, dearest first, and neither assorted lines nor empty drawers", () => {
    expect(asleep(lines).map((one) => one.name)).toEqual(["Never used", "7×13×4"]);
  });

  test("adds up the money and names the dearest", () => {
    expect(plain(asleepSentence(asleep(lines), "cu", "en-GB")))
      .toBe("301 cu lie in 2 lines that would last longer than 5 years, or that nothing used. The dearest, Never used, was not used in 36 months: don't reorder it.");
    expect(asleepSentence([], "cu", "en-GB")).toMatch(/^Nothing on the shelf/);
  });
});

describe("lineStory", () => {
  test("tells of the numbers that are the same thing, the use, the days to cover and the levels", () => {
    const story = lineStory(line(), "cu", "en-GB").map(plain);
    expect(story).toContain("The same thing under 2 numbers, counted together: FL-7113, TT-7113.");
    expect(story).toContain("Used 144 pieces in 36 months, and 3 more wanted when there were none.");
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

  test("makes a name that every disk takes", () => {
    expect(orderFileName("Far Lantern / Import", "2025-12-31")).toBe("order-far-lantern-import-2025-12-31.csv");
    expect(orderFileName("???", "2025-12-31")).toBe("order-supplier-2025-12-31.csv");
  });
});
