import { describe, expect, test } from "vitest";
import { chosenPart, choiceNotes } from "../../src/answers/stock/chosen-part.ts";
import type { ShelfRow } from "../../src/answers/stock/chosen-part.ts";
import { clumpSizes } from "../../src/answers/stock/clump.ts";
import { expectedDemand } from "../../src/answers/stock/expected-demand.ts";
import { leadTime } from "../../src/answers/stock/lead-time.ts";
import { seasonFactor } from "../../src/answers/stock/season-factor.ts";
import { useOf, useWindow } from "../../src/answers/stock/use-window.ts";
import { dayAfter } from "../../src/answers/days.ts";

describe("leadTime", () => {
  const taking = (...days: number[]) => days.map((one) => ({ days: one, quoted_days: 7 }));

  test("is what five deliveries took, mean and spread, whatever was quoted", () => {
    const lead = leadTime(taking(6, 8, 10, 12, 14), { lead_days: 7, lead_days_sd: 1 }, 14);
    // By hand: mean 10, squares 16 + 4 + 0 + 4 + 16 = 40, 40 / 4 = 10.
    expect(lead).toEqual({ days: 10, sd: Math.sqrt(10), source: "observed", arrivals: 5, late: 4, late_share: null, quoted_days: 7 });
  });

  test("is the quote while fewer than five deliveries are known, and says so", () =>
    expect(leadTime(taking(20, 20, 20, 20), { lead_days: 7, lead_days_sd: 2 }, 14)).toMatchObject({ days: 7, sd: 2, source: "quoted", arrivals: 4 }));

  test("takes a third of the time as its spread where nobody wrote one, and assumes a time where nobody quoted", () => {
    expect(leadTime([], { lead_days: 9, lead_days_sd: null }, 14)).toMatchObject({ days: 9, sd: 3, source: "quoted" });
    expect(leadTime([], { lead_days: null, lead_days_sd: null }, 15)).toMatchObject({ days: 15, sd: 5, source: "assumed", late: null });
  });

  test("gives the share of late deliveries from ten on, as a count before", () => {
    const ten = leadTime(taking(7, 7, 7, 8, 8, 8, 8, 8, 8, 9), { lead_days: 7, lead_days_sd: null }, 14);
    expect([ten.late, ten.late_share]).toEqual([7, 0.7]);
  });
});

describe("useWindow", () => {
  test("takes whole years only: two, else one, else all there is", () => {
    expect(useWindow("2020-01-01", "2023-12-31")).toEqual({ from: "2022-01-01", to: "2023-12-31", days: 730, recent_from: "2023-01-01" });
    expect(useWindow("2022-06-01", "2023-12-31")).toEqual({ from: "2023-01-01", to: "2023-12-31", days: 365, recent_from: "2023-01-01" });
    expect(useWindow("2023-12-02", "2023-12-31")).toEqual({ from: "2023-12-02", to: "2023-12-31", days: 30, recent_from: "2023-12-02" });
  });
});

describe("useOf", () => {
  const window = useWindow("2020-01-01", "2023-12-31");

  test("takes both years together while chance can make the difference", () =>
    expect(useOf(20, 13, window)).toEqual({ pieces: 20, days: 730, changed: null }));

  test("takes the last year alone when it is beyond chance different", () =>
    // Under equal years P(38 or more of 44) is far below 1 %.
    expect(useOf(44, 38, window)).toEqual({ pieces: 38, days: 365, changed: { now: 38, before: 6 } }));

  test("does not follow a change that is sure but small", () => expect(useOf(2200, 1200, window).changed).toBeNull());
});

describe("seasonFactor", () => {
  const intake = (from: string, days: number, tickets: (day: string) => number) =>
    Array.from({ length: days }, (_, i) => dayAfter(from, i)).map((day) => ({ day, tickets: tickets(day) }));

  test("is 1 under two full years, because there is no season to see", () =>
    expect(seasonFactor(intake("2023-01-01", 700, () => 3), "2024-11-30", 28)).toEqual({ factor: 1, years: 1, tickets: 0 }));

  test("compares the days ahead with the mean of the years, drawn a little toward 1", () => {
    const march = (day: string) => (day.slice(5, 7) === "03" ? 4 : 2);
    const { factor, years, tickets } = seasonFactor(intake("2021-03-01", 1096, march), "2024-02-29", 28);
    // Three years with 31 days of 4 and 334 of 2 (2024 has one more): usual = (93 × 4 + 1003 × 2) / 1096 = 2378 / 1096.
    expect([years, tickets]).toEqual([3, 3 * 28 * 4]);
    expect(factor).toBeCloseTo((336 + 10) / ((2378 / 1096) * 28 * 3 + 10), 2);
  });

  test("looks at four weeks at least, so that one busy Monday is no season", () =>
    expect(seasonFactor(intake("2021-01-01", 1095, () => 1), "2023-12-31", 3).tickets).toBe(3 * 28));
});

describe("expectedDemand", () => {
  test("adds the doubt about the use to the doubt about the delivery", () => {
    // Mean 0.1 × 20 = 2; size = 1 / (1/4 + (5/20)² + 1/4 × (5/20)²) = 3.0476, worked by hand.
    const { mean, level, p95 } = expectedDemand({ shape: 4, rate: 40, clump: 1 }, { days: 6, sd: 5 }, 14, 1, 0.9);
    expect(mean).toBeCloseTo(2, 12);
    // Shares of 0, 1, 2 … by the recursion of the negative binomial: .2148 .2594 .2080 .1387 .0831 .0464; up to 4 .9040, up to 5 .9504.
    expect([level, p95]).toEqual([4, 5]);
  });

  test("keeps more when pieces go in pairs: twice the variance at the same mean", () => {
    // Poisson-like rate (shape 4000), steady delivery: mean 2, variance 2 one by one and 4 in pairs: sizes infinite and 2.
    const known = { shape: 4000, rate: 40_000 };
    expect(expectedDemand({ ...known, clump: 1 }, { days: 6, sd: 0 }, 14, 1, 0.95).level).toBe(5);
    expect(expectedDemand({ ...known, clump: 2 }, { days: 6, sd: 0 }, 14, 1, 0.95).level).toBe(6);
  });

  test("grows with the season", () =>
    expect(expectedDemand({ shape: 4, rate: 40, clump: 1 }, { days: 6, sd: 5 }, 14, 1.5, 0.9).mean).toBeCloseTo(3, 12));
});

describe("clumpSizes", () => {
  test("are squares over pieces, drawn toward what all lines do, and never below one by one", () => {
    // All lines: (36 + 4) / (12 + 4) = 2.5.
    const lines = [{ pieces: 12, squares: 36 }, { pieces: 4, squares: 4 }, { pieces: 0, squares: 0 }];
    expect(clumpSizes(lines)).toEqual([(36 + 25) / 22, (4 + 25) / 14, 2.5]);
    expect(clumpSizes([{ pieces: 3, squares: 3 }])).toEqual([1]);
    expect(clumpSizes([{ pieces: 0, squares: 0 }])).toEqual([1]);
  });
});

describe("chosenPart", () => {
  const row = (part_no: string, unit_cost: number | null): ShelfRow => ({
    part_no, unit_cost, interchange: "g", refused: null, name: null, family: null, material: null, supplier: null, pack_qty: null,
    min_order_qty: null, on_hand: null, on_order: null, due_on: null, essential: null, replaces: null, lead_days: null, lead_days_sd: null,
    review_days: null, order_cost: null, min_order_value: null,
  });
  const rows = [row("A", 3), row("B", 2), row("C", 1), row("D", null)];

  test("is the cheapest piece that no newer number replaces", () => expect(chosenPart(rows, new Set(["C"]))?.part_no).toBe("B"));
  test("is an ended one only when nothing else is left", () => expect(chosenPart([row("C", 1)], new Set(["C"]))?.part_no).toBe("C"));
  test("says which others there are and that the shelf counts older numbers", () =>
    expect(choiceNotes(rows, rows[1] as ShelfRow, new Set(["C"]))).toEqual([
      "B at 2.00 a piece is the cheapest of 3 numbers for the same part (A at 3.00, D without a price).",
      "The shelf also counts older numbers: C.",
    ]));
});
