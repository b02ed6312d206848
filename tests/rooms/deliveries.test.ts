// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { deliveries, deliverySentence } from "../../src/rooms/stock/deliveries.ts";
import { deliveryChart } from "../../src/rooms/stock/delivery-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";
import { LEAD, line } from "./rows.ts";

const few = { ...LEAD, source: "quoted" as const, days: 18, arrivals: 3, quoted_days: 18, late: 1 };
const unknown = { ...LEAD, source: "assumed" as const, days: 14, arrivals: 0, quoted_days: null, late: null };
const rows = deliveries([
  line({ supplier: "Zetfield", lead: few }), line(), line({ interchange: "another" }),
  line({ supplier: "Corner shop", lead: unknown }), line({ supplier: null }),
]);

describe("deliveries", () => {
  test("names each supplier once and leaves out lines without one", () => {
    expect(rows.map((row) => row.supplier)).toEqual(["Corner shop", "Far Lantern", "Zetfield"]);
  });

  test("takes days as observed only where enough orders arrived", () => {
    expect(rows.map((row) => row.observed_days)).toEqual([null, 34, null]);
  });

  test("says what was quoted against what came, with the counts", () => {
    expect(rows.map((row) => deliverySentence(row, "en-GB"))).toEqual([
      "Corner shop quotes no days; too few of your orders have arrived to check that (0).",
      "Far Lantern quotes 21 days; your orders took 34 on average, 19 of 22 (86 %) came later than quoted.",
      "Zetfield quotes 18 days; too few of your orders have arrived to check that (3).",
    ]);
  });
});

describe("deliveryChart", () => {
  test("draws quoted strokes for all that quote, and a dot with its line only where orders were observed", async () => {
    const svg = drawn(deliveryChart(rows, sheet(760)));
    expect(words(svg, "names")).toEqual(["Far Lantern", "Zetfield"]);
    expect(marks(svg, "quoted", "line")).toBe(2);
    expect(marks(svg, "seen", "circle")).toBe(1);
    expect(words(svg, "counts")).toEqual(["34 days, 22 arrived", "3 arrived, too few"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/quoted-against-taken.svg");
  });

  test("draws nothing when no supplier quotes days or has delivered", () => {
    expect(deliveryChart(rows.filter((row) => row.supplier === "Corner shop"), sheet(760))).toBeNull();
  });
});
