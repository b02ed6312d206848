import { describe, expect, test } from "vitest";
import type { OrderMark } from "../../src/answers/stock/order-marks.ts";
import { groupsOfSeveral, handWords, numbersOf } from "../../src/rooms/stock/group-words.ts";
import { markedOrders } from "../../src/rooms/stock/marked-orders.ts";
import { draftLines, draftOf, draftTotal, NONE_CHOSEN, sentMarks, wholePieces, withChosen } from "../../src/rooms/stock/order-draft.ts";
import { deadSentence, moneySentence } from "../../src/rooms/stock/shelf-words.ts";
import { elsewhereLines, freeValue } from "../../src/rooms/stock/supplier-columns.ts";
import { shelfMoney } from "../../src/answers/stock/shelf-money.ts";
import { line, supplierSheet } from "./rows.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const next = line({ interchange: "next", name: "Next", part_no: "N-1", status: "enough", order_qty: 0, cost: 0, unit_cost: 2 });
const sheet = { ...supplierSheet([line()]), joint: { ...supplierSheet([line()]).joint, fill: [{ line: next, qty: 5, cost: 10 }] } };

describe("an order's draft", () => {
  test("holds the advised pieces and what fills the order up, told apart", () =>
    expect(draftOf(sheet, NONE_CHOSEN).map(({ line: { interchange }, qty, extra }) => [interchange, qty, extra])).toEqual([["bearing 7x11x3", 12, false], ["next", 5, true]]));

  test("takes the owner's number in place of the advice, and none takes the line out", () => {
    const draft = draftOf(sheet, withChosen(withChosen(NONE_CHOSEN, line(), 8), next, 0));
    expect(draftLines(draft).map((one) => [one.part_no, one.order_qty, one.cost])).toEqual([["FL-7113", 8, 12]]);
    expect(draftTotal(draft)).toBe(12);
    expect(draftTotal(draftOf(sheet, NONE_CHOSEN))).toBe(12 * 1.5 + 10);
  });

  test("is marked as sent with what the parts list said then", () =>
    expect(sentMarks(draftOf(sheet, withChosen(NONE_CHOSEN, next, 0)), "2026-01-05")).toEqual([
      { part_no: "FL-7113", supplier: "Far Lantern", qty: 12, ordered_on: "2026-01-05", arrived_on: null, seen: { on_hand: 2, on_order: null } },
    ]));

  test("reads whole pieces and nothing else", () => expect([" 7 ", "0", "-1", "1.5", "", "two"].map(wholePieces)).toEqual([7, 0, null, null, null, null]));
});

describe("markedOrders", () => {
  const mark = (more: Partial<OrderMark>): OrderMark => ({ part_no: "A", supplier: "ALD", qty: 6, ordered_on: "2026-01-02", arrived_on: null, seen: { on_hand: 1, on_order: 0 }, ...more });
  test("puts together what was sent together, under way first, then the newest", () => {
    const orders = markedOrders([mark({ arrived_on: "2026-01-04" }), mark({}), mark({ part_no: "B", qty: 2 }), mark({ supplier: null, ordered_on: "2026-01-03" })]);
    expect(orders.map(({ supplier, words, arrived_on }) => [supplier, words, arrived_on])).toEqual([
      ["no supplier named", "6 × A", null], ["ALD", "6 × A, 2 × B", null], ["ALD", "6 × A", "2026-01-04"],
    ]);
  });
});

describe("groups in words", () => {
  test("list what has several numbers, offer every number that can be joined, and say what was settled", () => {
    const single = line({ interchange: "S", part_nos: ["S-1"], name: null }), mixed = line({ interchange: "M", part_nos: ["M-1"], status: "refused" });
    expect(groupsOfSeveral([single, line(), mixed]).map((one) => one.interchange)).toEqual(["bearing 7x11x3"]);
    expect(numbersOf([single, line(), mixed])).toEqual([{ value: "FL-7113", label: "FL-7113, Bearing 7×11×3" }, { value: "S-1", label: "S-1" }, { value: "TT-7113", label: "TT-7113, Bearing 7×11×3" }]);
    expect([{ kind: "join" as const, part_nos: ["A", "B"] }, { kind: "split" as const, part_nos: ["A"] }, { kind: "size" as const, part_no: "Q", size: "4x8x3" }].map(handWords))
      .toEqual(["A and B are the same part.", "A stands by itself.", "Q is 4x8x3."]);
  });
});

describe("shelf and suppliers in words", () => {
  test("say what the drawers hold, what is not known of them, and what is asleep", () => {
    const dead = line({ interchange: "d", name: "7×13×4", on_hand: 63, unit_cost: 1.6, used: 3, cover_years: 42, status: "enough", belief: { shape: 3, rate: 730.5, clump: 1, unevenness: 0 } });
    const money = shelfMoney([dead, line({ on_hand: null })]);
    expect(plain(moneySentence(money, "cu", "en-GB"))).toBe("Your drawers hold parts for 101 cu in 1 line, most of it in ball bearings (101 cu); 1 line is not counted.");
    expect(plain(deadSentence(money, "cu", "en-GB"))).toBe("101 cu lie in 1 line that would last longer than 5 years, or that nothing used; parts for 88 cu of it two years will hardly take. The dearest is 7×13×4: don't reorder it.");
    expect(deadSentence(shelfMoney([]), "cu")).toMatch(/^Nothing on the shelf lasts longer/);
  });

  test("name each pair of suppliers of one part once, and read a sum or nothing", () => {
    const pair = (supplier: string, here: string, there: string, other: string) => ({ supplier, elsewhere: [{ interchange: "g", here, there, supplier: other, price_ratio: 0.5, days_more: 13 }] });
    expect(elsewhereLines([pair("ALD", "A", "B", "FLI"), pair("FLI", "B", "A", "ALD")] as never)).toEqual(["A from ALD, or B from FLI: 0.5 times the price, 13 days later."]);
    expect(["80", "80,5", ""].map(freeValue)).toEqual([80, 80.5, null]);
    for (const wrong of ["-3", "x", "0"]) expect(() => freeValue(wrong)).toThrow("is no sum of money");
  });
});
