// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import type { Earning } from "../../src/answers/labour/earnings.ts";
import { earningsChart } from "../../src/rooms/labour/earnings-chart.ts";
import { driftChart, techniciansChart } from "../../src/rooms/labour/pace-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";

const earning = (job: string, per_hour: number, jobs: number, standing: Earning["standing"]): Earning => ({
  job, reel_kind: "spinning", tier: "*", maker: "*", model: "*", jobs, hours: jobs, charged: jobs * per_hour, per_hour,
  per_hour_low: jobs < 10 ? null : per_hour - 30 / Math.sqrt(jobs), per_hour_high: jobs < 10 ? null : per_hour + 30 / Math.sqrt(jobs), usual_charge: 50, fair_charge: 60, gap_per_year: -100, standing,
});
const year = (technician: string, at: number, ratio: number, jobs = 300) => ({ technician, year: at, jobs, ratio, low: ratio - 0.05, high: ratio + 0.05, unadjusted: 1.1 });

describe("earningsChart", () => {
  const rows = [earning("full service", 44, 600, "under your price"), earning("bail", 53, 60, "about your price"), earning("reseal", 40, 4, "too few jobs")];
  test("draws a dot and its range for each job with ten, the cost and the price as lines, and leaves thin jobs out", async () => {
    const svg = drawn(earningsChart(rows, { hour_price: 54, hour_cost: 31, beside_min: null }, "cu", sheet(900)));
    expect([marks(svg, "earned", "circle"), marks(svg, "range", "line"), marks(svg, "rate", "line")]).toEqual([2, 2, 2]);
    expect(words(svg, "rate-name")).toEqual(["costs you 31", "your price 54"]);
    expect(words(svg, "standing")).toEqual(["under your price", "about your price"]);
    expect(svg.textContent).toContain("labour charged for an hour at the bench, cu");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/an-hour-brings-in.svg");
  });
  test("draws no line for a rate that was not written, and nothing without jobs", () => {
    expect(marks(drawn(earningsChart(rows, { hour_price: null, hour_cost: null, beside_min: null }, "", sheet(900))), "rate", "line")).toBe(0);
    expect(earningsChart([], { hour_price: 54, hour_cost: 31, beside_min: null }, "cu", sheet(900))).toBeNull();
  });
});

describe("techniciansChart", () => {
  test("draws each told year with its range and count beside the line of one, and none that was not told", async () => {
    const svg = drawn(techniciansChart([year("T2", 2023, 1.35), year("T2", 2024, 1.15), { technician: "T3", year: 2024, jobs: 4, unadjusted: null }], "T1", sheet(800)));
    expect([marks(svg, "ratio", "circle"), marks(svg, "range", "line")]).toEqual([2, 2]);
    expect(words(svg, "names")).toEqual(["T2, times T1"]);
    expect(words(svg, "jobs")).toEqual(["300 jobs", "300 jobs"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/training-and-jobs.svg");
  });
  test("draws nothing when no year has enough", () => expect(techniciansChart([], "T1", sheet(800))).toBeNull());
});

describe("driftChart", () => {
  const half = (from: string, n: number, median: number, low: number | null) => ({ from, n, median, low, high: low === null ? null : median + 5 });
  test("draws the middle of each half year with its count, and a range only where there is one", async () => {
    const svg = drawn(driftChart([half("2024-01-01", 40, 60, 56), half("2024-07-01", 30, 66, 61), half("2025-01-01", 3, 70, null)], sheet(800)));
    expect([marks(svg, "usual", "circle"), marks(svg, "range", "line")]).toEqual([3, 2]);
    expect(words(svg, "jobs")).toEqual(["40 jobs", "30 jobs", "3 jobs"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/usual-time-over-the-years.svg");
  });
  test("draws nothing of a single half year", () => expect(driftChart([half("2024-01-01", 40, 60, 56)], sheet(800))).toBeNull());
});
