// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { sharesChart } from "../../src/rooms/failures/shares-chart.ts";
import { modelName } from "../../src/answers/model-name.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";
import { rate } from "./rows.ts";

const models = [
  rate(40, 166), rate(9, 80, { maker: "Wexmoor", model: "Slipdene 45" }),
  rate(11, 190, { maker: "Brackhelm", model: "Dovekin 25" }), rate(1, 8, { maker: "Uffenby", model: "Jarnvik 30-II" }),
];
const remark = (row: { failed: number }) => (row.failed === 40 ? "stands out" : "");

describe("sharesChart", () => {
  test("draws a dot and a line for each share, and neither under ten inspected", () => {
    const svg = drawn(sharesChart({ rows: models, name: modelName, remark, all_models: 0.11 }, sheet(760)));
    expect(marks(svg, "seen", "circle")).toBe(3);
    expect(marks(svg, "range", "line")).toBe(3);
    expect(words(svg, "names")).toEqual(models.map(modelName));
  });

  test("writes counts at the right of every line, and what is too few beside them", async () => {
    const svg = drawn(sharesChart({ rows: models, name: modelName, remark, all_models: 0.11 }, sheet(760)));
    expect(words(svg, "counts")).toEqual(["40 of 166", "9 of 80", "11 of 190", "1 of 8"]);
    expect(words(svg, "remark")).toEqual(["stands out", "too few to say"]);
    expect(words(svg, "all-models")).toEqual(["all models 11 %"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/shares-of-models.svg");
  });

  test("sets planned and complaint apart by a filled and an open dot on one line", async () => {
    const both = models.flatMap((row) => [row, { ...rate(row.failed, Math.ceil(row.inspected / 3)), maker: row.maker, model: row.model, opening: "complaint" as const }]);
    const svg = drawn(sharesChart({ rows: both, name: modelName }, sheet(760)));
    const fill = (name: string) => [...svg.querySelectorAll(`g.${name}`)].map((group) => group.getAttribute("fill"));
    expect(words(svg, "names")).toHaveLength(4);
    expect(fill("planned")).not.toEqual(fill("complaint"));
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/shares-planned-and-complaint.svg");
  });

  test("marks shares whose openings are not told apart by another shape than a circle", () => {
    const svg = drawn(sharesChart({ rows: models.map((row) => ({ ...row, opening: "*" as const })), name: modelName }, sheet(760)));
    expect(marks(svg, "all", "path")).toBe(3);
    expect(marks(svg, "all", "circle")).toBe(0);
  });

  test("has per cent on the axis and says of what", () => {
    const text = drawn(sharesChart({ rows: models, name: modelName }, sheet(760))).textContent ?? "";
    expect(text).toContain("10 %");
    expect(text).toContain("share failed, of inspected");
  });

  test("keeps every line inside the axis, a share of one too", () => {
    const svg = drawn(sharesChart({ rows: [rate(12, 12)], name: modelName }, sheet(500)));
    const ends = [...svg.querySelectorAll("g.range line")].map((one) => Number(one.getAttribute("x2")));
    const leaders = [...svg.querySelectorAll("g.leaders line")].map((one) => Number(one.getAttribute("x2")));
    expect(ends[0]).toBeLessThanOrEqual(leaders[0] ?? NaN);
  });

  test("draws nothing when there is no row", () => {
    expect(sharesChart({ rows: [], name: modelName }, sheet(760))).toBeNull();
  });

  test("has no style sheet of its own once the page has made it ready", async () => {
    const { drawing } = await import("../../src/ui/drawing.ts");
    const ready = drawing(sharesChart({ rows: models, name: modelName }, sheet(760)));
    expect(ready?.querySelectorAll("style, [style]")).toHaveLength(0);
  });
});
