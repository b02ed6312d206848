// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { funnel } from "../../src/answers/failure-pages/funnel.ts";
import { comebackChart } from "../../src/rooms/failures/comeback-chart.ts";
import { funnelChart, outside } from "../../src/rooms/failures/funnel-chart.ts";
import { modelsFunnel, partsFunnel } from "../../src/rooms/failures/funnel-pictures.ts";
import { overTimeChart } from "../../src/rooms/failures/over-time-chart.ts";
import { seasonsChart } from "../../src/rooms/failures/seasons-chart.ts";
import { twoModelsChart } from "../../src/rooms/failures/two-models-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";
import { quarter, side, verdict } from "./rows.ts";

/** Each way of coming in alike, so that the funnel's counts are the ones given. */
const sides = (failed: number, inspected: number) => (["*", "planned", "complaint"] as const).map((opening) => side(failed, inspected, [40, 1200], { opening }));
const models = [
  verdict({ sides: sides(32, 236) }), verdict({ maker: "Wexmoor", model: "Slipdene 45", word: "no different", sides: sides(5, 117) }),
  verdict({ maker: "Brackhelm", model: "Dovekin 25", word: "no different", sides: sides(11, 211) }), verdict({ maker: "Ostvarg", model: "Ekholt 30", word: "no different", sides: sides(9, 163) }),
  verdict({ maker: "Uffenby", model: "Jarnvik 30-II", word: "too few", sides: sides(1, 8) }),
];

describe("the funnel of the models of a part", () => {
  const picture = modelsFunnel(funnel(models, "planned"), "Brackhelm Dovekin 25", "en-GB");

  test("has a dot for each model from ten inspected on, its share failed over the times inspected", () => {
    expect(picture.dots.map(({ name, across }) => [name, across])).toEqual([["Brackhelm Whinbeck 40", 236], ["Wexmoor Slipdene 45", 117], ["Brackhelm Dovekin 25", 211], ["Ostvarg Ekholt 30", 163]]);
    expect(picture.dots[0]?.up).toBeCloseTo(32 / 236, 12);
  });

  test("names the model outside the limits and the one the page is about, and no other", async () => {
    const svg = drawn(funnelChart(picture, sheet(760)));
    expect(picture.dots.filter((dot) => outside(dot, picture.edges)).map(({ name }) => name)).toEqual(["Brackhelm Whinbeck 40"]);
    expect(words(svg, "named").sort()).toEqual(["Brackhelm Dovekin 25", "Brackhelm Whinbeck 40"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/funnel-of-models.svg");
  });

  test("draws both pairs of limits, the share of all models by name, and says what the axes count", () => {
    const svg = drawn(funnelChart(picture, sheet(760)));
    expect(marks(svg, "limit", "path")).toBe(4);
    expect(words(svg, "common")).toEqual(["all models 8 %"]);
    expect(svg.textContent).toContain("times inspected, planned services");
    expect(svg.textContent).toContain("share failed");
  });

  test("tells what worries by a filled dot, the others by open ones", () => {
    const svg = drawn(funnelChart(picture, sheet(760)));
    expect([...svg.querySelectorAll("g.worrying circle")]).toHaveLength(1);
    expect(svg.querySelector("g.worrying")?.getAttribute("fill")).not.toBe(svg.querySelector("g.dots:not(.worrying)")?.getAttribute("fill"));
  });

  test("is not drawn without a model of ten inspected", () => {
    expect(funnelChart(modelsFunnel(funnel(models.slice(4), "planned")), sheet(760))).toBeNull();
  });
});

describe("the funnel of the parts of a model", () => {
  test("sets seen over expected against the failures to expect: 32 seen where the others' rate says 7.9", () => {
    const { dots, common } = partsFunnel([verdict({ sides: sides(32, 236) })], "planned");
    expect(common).toBe(1);
    expect(dots[0]?.across).toBeCloseTo((236 * 40) / 1200, 12);
    expect(dots[0]?.up).toBeCloseTo(32 / ((236 * 40) / 1200), 12);
  });

  test("has limits like Poisson's: four to expect leave 1 to 9 in nineteen of twenty", () => {
    const edge = partsFunnel([verdict({ sides: sides(32, 120) })], "planned").edges.find(({ across }) => across > 3.9);
    // Poisson table for mean 4: P(X ≤ 0) = 0.018, P(X ≤ 8) = 0.979 (any printed table; smoothed between whole counts here).
    expect((edge?.low95 ?? 0) * (edge?.across ?? 0)).toBeGreaterThan(0);
    expect((edge?.low95 ?? 9) * (edge?.across ?? 9)).toBeLessThan(1.01);
    expect((edge?.high95 ?? 0) * (edge?.across ?? 0)).toBeGreaterThan(7);
    expect((edge?.high95 ?? 99) * (edge?.across ?? 99)).toBeLessThan(9);
  });

  test("leaves out a part that never failed on the others, and one under ten inspected", () => {
    const never = verdict({ sides: (["*", "planned", "complaint"] as const).map((opening) => side(3, 90, [0, 900], { opening })) });
    expect(partsFunnel([never, verdict({ sides: sides(2, 9) })], "planned").dots).toEqual([]);
  });
});

describe("seasonsChart", () => {
  const season = (year: number, failed: number, inspected: number) => ({ season: year, inspected, failed, others_inspected: 400, others_failed: 9, adjusted: { value: null, low: null, high: null }, compared: inspected });

  test("draws the model filled and the others open, with ranges and counts, and no dot under ten inspected", async () => {
    const svg = drawn(seasonsChart([season(2023, 9, 74), season(2024, 10, 78), season(2025, 3, 9)], sheet(760)));
    expect([marks(svg, "mine", "circle"), marks(svg, "others", "circle"), marks(svg, "range", "line")]).toEqual([2, 3, 5]);
    expect(words(svg, "counts")).toEqual(["9 of 74", "10 of 78", "9 of 400", "9 of 400", "9 of 400"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/season-by-season.svg");
  });

  test("is not drawn when the model was never inspected ten times in a season", () => {
    expect(seasonsChart([season(2023, 1, 9)], sheet(760))).toBeNull();
  });
});

describe("comebackChart", () => {
  const point = (age: number, at_risk: number, mean: number) => ({ age, at_risk, mean_cumulative: mean, low: mean / 2, high: mean * 1.5 });
  const curve = [point(0, 40, 0), point(200, 30, 0.1), point(500, 12, 0.35), point(900, 4, 0.6)];

  test("draws each curve by name, limits around the chosen one, and stops where under five reels are watched", async () => {
    const svg = drawn(comebackChart([{ name: "all models", curve, chosen: false }, { name: "Brackhelm Whinbeck 40", curve, chosen: true }], sheet(760)));
    expect(words(svg, "curve-name")).toEqual(["all models", "Brackhelm Whinbeck 40"]);
    expect(marks(svg, "limits", "path")).toBe(1);
    expect(svg.textContent).toContain("months since the reel was first seen here");
    expect(svg.textContent).not.toContain("28");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/failures-per-reel.svg");
  });

  test("is not drawn from a single point", () => {
    expect(comebackChart([{ name: "all models", curve: curve.slice(0, 1), chosen: true }], sheet(760))).toBeNull();
  });
});

describe("overTimeChart with changes of habit", () => {
  const periods = ["2024-01-01", "2024-04-01", "2024-07-01", "2024-10-01"].map((period, at) => quarter(period, 5, 60, at < 2 ? 4 : 50));
  const change = (from: string) => ({ from, position: null, text: "changed at every service" });

  test("draws a dated line for each change inside the time drawn, and keeps failures and replacements two lines", async () => {
    const svg = drawn(overTimeChart(periods, sheet(760), [change("2024-07-01"), change("2019-01-01")]));
    expect(marks(svg, "habit", "line")).toBe(1);
    expect(words(svg, "habit-name")).toEqual(["1 Jul 2024: changed at every service"]);
    expect(words(svg, "line-name").map((word) => word.slice(0, 8))).toEqual(["replaced", "failed"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/a-change-of-habit.svg");
  });

  test("writes a late change to the left of its line, so that it stays on the sheet", () => {
    const anchor = (from: string) => drawn(overTimeChart(periods, sheet(760), [change(from)])).querySelector("g.habit-name")?.getAttribute("text-anchor");
    expect([anchor("2024-02-01"), anchor("2024-09-20")]).toEqual(["start", "end"]);
  });

  test("is drawn as before where nothing was written down", () => {
    expect(drawn(overTimeChart(periods, sheet(760))).outerHTML).toBe(drawn(overTimeChart(periods, sheet(760), [])).outerHTML);
  });
});

describe("twoModelsChart", () => {
  test("sets the two on one line each, filled and open, with counts, and no dot where too few were inspected", async () => {
    const mark = (part: string, first: boolean, share: number | null) => ({ part, first, share, low: share === null ? null : share / 2, high: share === null ? null : share * 2, counts: "3 of 40" });
    const svg = drawn(twoModelsChart([mark("One-way clutch", true, 0.14), mark("One-way clutch", false, 0.03), mark("Bail spring", true, 0.01), mark("Bail spring", false, null)], sheet(760)));
    expect([marks(svg, "first", "circle"), marks(svg, "second", "circle")]).toEqual([2, 1]);
    expect(words(svg, "counts")).toHaveLength(4);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/two-models.svg");
  });
});
