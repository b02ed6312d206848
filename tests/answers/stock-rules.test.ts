import { describe, expect, test } from "vitest";
import { chosenPart, choiceNotes } from "../../src/answers/stock/chosen-part.ts";
import type { ShelfRow } from "../../src/answers/stock/chosen-part.ts";
import { clumpSizes } from "../../src/answers/stock/clump.ts";
import { expectedDemand } from "../../src/answers/stock/expected-demand.ts";
import { leadTime } from "../../src/answers/stock/lead-time.ts";

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

describe("expectedDemand", () => {
  test("adds the doubt about the use to the doubt about the delivery", () => {
    // Mean 0.1 × 20 = 2; size = 1 / (1/4 + (5/20)² + 1/4 × (5/20)²) = 3.0476, worked by hand.
    const { mean, level, p95 } = expectedDemand({ shape: 4, rate: 40, clump: 1, unevenness: 0 }, { days: 6, sd: 5 }, 14, 1, 0.9);
    expect(mean).toBeCloseTo(2, 12);
    // Shares of 0, 1, 2 … by the recursion of the negative binomial: .2148 .2594 .2080 .1387 .0831 .0464; up to 4 .9040, up to 5 .9504.
    expect([level, p95]).toEqual([4, 5]);
  });

  test("keeps more when pieces go in pairs: twice the variance at the same mean", () => {
    // Poisson-like rate (shape 4000), steady delivery: mean 2, variance 2 one by one and 4 in pairs: sizes infinite and 2.
    const known = { shape: 4000, rate: 40_000 };
    expect(expectedDemand({ ...known, clump: 1, unevenness: 0 }, { days: 6, sd: 0 }, 14, 1, 0.95).level).toBe(5);
    expect(expectedDemand({ ...known, clump: 2, unevenness: 0 }, { days: 6, sd: 0 }, 14, 1, 0.95).level).toBe(6);
  });

  test("keeps more when past weeks swung beyond chance", () => {
    // Poisson of mean 2 as above; a quarter of mean² more, so variance 3 and size 4: (2/3)^4 = .1975, then × (1/3)(k+4)/(k+1):
    // .1975 .2634 .2195 .1463 .0854 .0455 .0228; up to 4 .9121, up to 5 .9576.
    expect(expectedDemand({ shape: 1e9, rate: 1e10, clump: 1, unevenness: 0.25 }, { days: 6, sd: 0 }, 14, 1, 0.95)).toMatchObject({ level: 5, p95: 5 });
    expect(expectedDemand({ shape: 1e9, rate: 1e10, clump: 1, unevenness: 0.25 }, { days: 6, sd: 0 }, 14, 1, 0.91).level_chance).toBeCloseTo(0.9122, 3);
  });

  test("grows with the season", () =>
    expect(expectedDemand({ shape: 4, rate: 40, clump: 1, unevenness: 0 }, { days: 6, sd: 5 }, 14, 1.5, 0.9).mean).toBeCloseTo(3, 12));
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
    min_order_qty: null, on_hand: null, on_order: null, due_on: null, essential: null, criticality: null, replaces: null, lead_days: null, lead_days_sd: null,
    review_days: null, order_cost: null, min_order_value: null, listed_on_hand: null, listed_on_order: null,
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
