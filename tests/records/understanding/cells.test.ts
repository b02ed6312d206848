import { describe, expect, test } from "vitest";
import { Wrong } from "../../../src/records/checking/wrong.ts";
import { amountOf, numberOf } from "../../../src/records/understanding/cells/amount.ts";
import { dayOf } from "../../../src/records/understanding/cells/day.ts";
import { durationOf } from "../../../src/records/understanding/cells/duration.ts";
import { reelCount, reelsIn, ReelNames } from "../../../src/records/understanding/cells/reel-name.ts";
import { countSaid, rinseSaid, waterSaid } from "../../../src/records/understanding/cells/said.ts";
import { partSize, stockCount } from "../../../src/records/understanding/cells/stock-count.ts";
import { TicketNumbers } from "../../../src/records/understanding/cells/ticket-number.ts";
import { batchIn, shares, ticketNumbers } from "../../../src/records/understanding/several-reels.ts";

// The spellings are those of importer rules 1 to 8 of the trade brief; the values were worked out by hand.
describe("a time at the bench", () => {
  test.each([
    ["55", "minutes", [55]], ["1h40", "minutes", [100]], ["1:40", "minutes", [100]], ["1.20", "hours", [72]], [".75 ea", "either", [45]], ["1/2 hr", "either", [30]],
    ["2 1/4", "either", [135]], ["0,5+0,5", "either", [30, 30]], ["1,2 h", "either", [72]], ["2:15", "either", [135]], ["5", "minutes", [300]], ["6", "minutes", [6]],
    ["0", "hours", []], ["1½ h", "either", [90]], ["40 min", "hours", [40]], ["90", "hours", [90]], ["1h", "minutes", [60]],
  ] as const)("%s in a column of %s is %j minutes", (text, unit, minutes) => expect(durationOf(text, unit)?.minutes).toEqual(minutes));
  test.each(["soon", "1:75", "1/0", "", "h", "2025-01-01"])("%j is none", (text) => expect(durationOf(text, "either")).toBeNull());
});

describe("a day", () => {
  const day = { order: "day first", year: null, last_day: "2026-12-31" } as const, month = { ...day, order: "month first" } as const, open = { ...day, order: null } as const;
  test.each([
    ["03/04/25", day, "2025-04-03"], ["03/04/25", month, "2025-03-04"], ["5.4.25", day, "2025-04-05"], ["13/03/2024", month, "2024-03-13"], ["3/31", { ...day, year: 2025 }, "2025-03-31"],
    ["03.11.2025 21:40", day, "2025-11-03"], ["2025-11-02 19:14", open, "2025-11-02"], ["5/5/2025", open, "2025-05-05"], ["00/00/0000", open, null], ["12-Nov", { ...open, year: 2024 }, "2024-11-12"],
    ["3/4/27", day, "1927-04-03"],
  ] as const)("%s is read as its file is", (text, context, expected) => {
    const read = dayOf(text, context);
    expect(read instanceof Wrong ? read.reason : read).toBe(expected === "1927-04-03" ? "3 April 1927 is before 1950; is the year right?" : expected);
  });
  test.each([["03/04/2025", "could be 3 April 2025 or 4 March 2025"], ["4/3", "has no year; write the date with its year, as 2026-03-14"], ["31/4/2025", "calendar"], ["soon", "not a date"]])("%s cannot be read without being told", (text, reason) => {
    const read = dayOf(text, open);
    expect(read instanceof Wrong && read.reason).toContain(reason);
  });
});

test("amounts lose their sign and code and are never converted", () => {
  const all = ["£38.00", "£52,00", "EUR 11,50", "11.00 cu/pk", "1 240.50", "2.4", "-52.00"].map((text) => amountOf(text, null));
  expect(all.map((one) => [one?.value, one?.currency, one?.per_pack])).toEqual([
    [38, "GBP", false], [52, "GBP", false], [11.5, "EUR", false], [11, "cu", true], [1240.5, null, false], [2.4, null, false], [-52, null, false],
  ]);
  expect([numberOf("1,240", "point"), numberOf("1,240", "comma"), numberOf("1.240,50", "comma"), numberOf("1,240", null)]).toEqual([1240, 1.24, 1240.5, null]);
  expect([amountOf("various", null), amountOf("", null)]).toEqual([null, null]);
});

test("answers in words name a water, a habit and a count only where they leave one reading", () => {
  expect(["Sea, from rocks", "lake + estuary", "River", "both", "sea+lake"].map(waterSaid)).toEqual(["salt", null, "fresh", null, null]);
  expect(["always ;-)", "sometimes", "no need", "never", "?", "smtimes", "n"].map(rinseSaid)).toEqual(["always", "sometimes", null, "never", null, "sometimes", "never"]);
  expect(["lots", "~30", "about 12", "120", "10-15"].map(countSaid)).toEqual([null, 30, 12, 120, null]);
});

test("a letter in a ticket number is a figure only where the other numbers say so", () => {
  const numbers = new TicketNumbers();
  for (const text of ["R-1041", "R-1042", "R-1O43"]) numbers.see(text);
  expect(["R-1O43", "R-1041", "RO-143", "X-1O4"].map((text) => numbers.mended(text))).toEqual(["R-1043", "R-1041", "RO-143", "X-1O4"]);
});

test("several reels in a cell are told from one reel with something beside it", () => {
  expect(["Withy 5 and Fernhowe 7", "Ekholt 30 / spare spool", "Dunvegg 20 star"].map(reelsIn)).toEqual([["Withy 5", "Fernhowe 7"], ["Ekholt 30 / spare spool"], ["Dunvegg 20 star"]]);
  expect(["greased. x3 reels", "3 reels done", "Club (3 of 6)", "spool"].map(reelCount)).toEqual([3, 3, 1, 1]);
  expect([ticketNumbers("1053/1054"), ticketNumbers("1053/54"), ticketNumbers("R-1041")]).toEqual([["1053", "1054"], ["1053", "1054"], ["R-1041"]]);
  expect([shares("clicks gone; sticky", 2), shares("click spring / cork", 2), shares("both", 2)]).toEqual([["clicks gone", "sticky"], ["click spring", "cork"], null]);
  expect([batchIn("Club (3 of 6)", "2025-04-04"), batchIn("H. Miller", "2025-04-04")]).toEqual(["club 2025-04-04", null]);
});

describe("maker and model", () => {
  test("are told apart by the shop's list, whatever blanks and capitals are written", () => {
    const names = new ReelNames([{ maker: "Brackhelm", model: "Whinbeck 40" }, { maker: "Wexmoor", model: "Slipdene 45" }]);
    expect(["BRACKHELM whinbeck 40", "Slipdene45", "Slipdene 45 left", "Brakhelm Winbeck", "dont know, black one"].map((text) => names.nameOf(text)).map((name) => name && [name.maker, name.model, name.rest]))
      .toEqual([["Brackhelm", "Whinbeck 40", ""], ["Wexmoor", "Slipdene 45", ""], ["Wexmoor", "Slipdene 45", "left"], ["Brakhelm", "Winbeck", ""], null]);
  });
  test("without a list, a first word with several models behind it is a maker", () => {
    const names = new ReelNames([]);
    for (const text of ["Eldmere Withy 5", "Eldmere Fernhowe 7", "Dunvegg 20"]) names.see(text);
    names.settle();
    expect(["Eldmere Withy 5", "Dunvegg 20"].map((text) => names.nameOf(text)).map((name) => name && [name.maker, name.model])).toEqual([["Eldmere", "Withy 5"], [null, "Dunvegg 20"]]);
  });
});

test("a shelf's packs and sizes are counted and written our way", () => {
  expect([stockCount("3 pk + 8", 10), stockCount("1 (+4 o/o)", 1), stockCount("a bag", 50), stockCount("2 pk", null), stockCount("9", null)])
    .toEqual([{ on_hand: 38, on_order: null }, { on_hand: 1, on_order: 4 }, null, null, { on_hand: 9, on_order: null }]);
  expect([partSize("LR brg", "7x4x2.5"), partSize("line roller brg", "4x7x2.5 / MR74"), partSize("-014 oring", "12.4x1.8"), partSize("AR clutch", "Whinbeck")]).toEqual(["4x7x2.5", "4x7x2.5", "AS568-014", null]);
});
