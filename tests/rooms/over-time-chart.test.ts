// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { overTimeChart } from "../../src/rooms/failures/over-time-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";
import { quarter } from "./rows.ts";

/** Failures stay as they were while from mid 2024 on the part is changed as routine at every service. */
const habit = ["2023-01-01", "2023-04-01", "2023-07-01", "2023-10-01", "2024-01-01", "2024-04-01", "2024-07-01", "2024-10-01"]
  .map((period, at) => quarter(period, [2, 3, 1, 2, 3, 2, 2, 3][at] ?? 0, 55, at < 6 ? 2 : 51));
const across = (svg: Element, name: string, tag: string) =>
  [...svg.querySelectorAll(`g.${name} ${tag}`)].map((one) => /,\s*(-?[\d.]+)/.exec(one.getAttribute("transform") ?? "")?.[1] ?? one.getAttribute("cy"));

describe("overTimeChart", () => {
  test("shows a new habit as squares that rise while the dots stay", async () => {
    const svg = drawn(overTimeChart(habit, sheet(640)));
    const squares = across(svg, "replaced", "path").map(Number), dots = across(svg, "failed", "circle").map(Number);
    expect(squares).toHaveLength(8);
    expect((squares[0] ?? NaN) - (squares[7] ?? NaN)).toBeGreaterThan(100);
    expect(Math.max(...dots) - Math.min(...dots)).toBeLessThan(15);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/failures-against-replacements.svg");
  });

  test("names both lines at their end and carries per cent and years on its axes", () => {
    const svg = drawn(overTimeChart(habit, sheet(640)));
    expect(words(svg, "line-name").join(" ")).toMatch(/replaced, worn.*failed/s);
    expect(svg.textContent).toContain("2023");
    expect(svg.textContent).toContain("40 %");
  });

  test("leaves out quarters with under ten inspected", () => {
    const svg = drawn(overTimeChart([...habit, quarter("2025-01-01", 1, 4, 0)], sheet(640)));
    expect(marks(svg, "failed", "circle")).toBe(8);
  });

  test("draws nothing when fewer than two quarters have ten inspected", () => {
    expect(overTimeChart([quarter("2025-01-01", 1, 40, 0), quarter("2025-04-01", 1, 4, 0)], sheet(640))).toBeNull();
  });
});
