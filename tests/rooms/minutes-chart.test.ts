// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { minutesChart, type MinutesLine } from "../../src/rooms/labour/minutes-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";

const strip = (name: string, median: number, n: number): MinutesLine => {
  const ticks = Array.from({ length: 41 }, (_, at) => Math.round(median * Math.exp(0.28 * ((at - 20) / 9))));
  return { name, n, ticks, median, p80: ticks[32] ?? null };
};
const lines = [strip("full service, spinning", 67, 612), strip("external, spinning", 22, 306), { name: "gear, fly", n: 6, ticks: [30, 31, 40, 44, 50, 61], median: 42, p80: null }];

describe("minutesChart", () => {
  test("draws a stroke a job, a dot for the usual time and a tall stroke for four in five", async () => {
    const svg = drawn(minutesChart(lines, sheet(820)));
    expect(marks(svg, "jobs", "line")).toBe(41 + 41 + 6);
    expect(marks(svg, "usual", "circle")).toBe(3);
    expect(marks(svg, "four-in-five", "line")).toBe(2);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/minutes-by-job.svg");
  });

  test("writes usual, four in five and the number of jobs, with a dash where it cannot be told", () => {
    const svg = drawn(minutesChart(lines, sheet(820)));
    expect(words(svg, "heads")).toEqual(["usual", "4 in 5 within", "jobs"]);
    expect(words(svg, "figures").map((word) => word.replaceAll("\u00a0", " ")))
      .toEqual(["1 h 07", "22 min", "42 min", "1 h 37", "32 min", "–", "612", "306", "6"]);
    expect(svg.textContent).toContain("minutes at the bench");
  });

  test("lets a single endless job run off the paper rather than squeeze the rest", () => {
    const svg = drawn(minutesChart([{ ...strip("full service, spinning", 67, 612), ticks: [...strip("", 67, 41).ticks, 900] }], sheet(820)));
    expect(marks(svg, "jobs", "line")).toBeLessThan(42);
    expect(marks(svg, "jobs", "line")).toBeGreaterThan(38);
  });

  test("draws nothing when there is no job", () => {
    expect(minutesChart([], sheet(820))).toBeNull();
  });
});
