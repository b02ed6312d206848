// @vitest-environment jsdom
import { describe, expect, test } from "vitest";
import { gradesChart } from "../../src/rooms/wear/grades-chart.ts";
import { rinseChart, rinseEffects, rinseRows } from "../../src/rooms/wear/rinse-chart.ts";
import { wearCurveChart } from "../../src/rooms/wear/wear-curve-chart.ts";
import { drawn, marks, sheet, standAlone, words } from "./picture.ts";
import { beyondRow, CURVE, effect, GRADE_PICTURE, HABITS, life, limits, rinsed, RUG, STEPS, thinRow, wearRow } from "./wear-rows.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");
const picture = { row: wearRow(), curve: CURVE, steps: STEPS, rug: RUG };

describe("wearCurveChart", () => {
  test("draws the fitted curve with its range, the steps, and every inspection by shape: crosses failed, rings good", async () => {
    const svg = drawn(wearCurveChart(picture, sheet(860)));
    for (const name of ["range", "fitted", "steps"]) expect([name, marks(svg, name, "path")]).toEqual([name, 1]);
    expect(marks(svg, "rug-failed", "path")).toBe(RUG.filter((one) => one.failed > 0).length);
    expect(marks(svg, "rug-good", "circle")).toBe(RUG.filter((one) => one.good > 0).length);
    expect(svg.textContent).toContain("salt days since the part was fitted or last renewed");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/wear-curve.svg");
  });

  test("marks where one in ten has failed, with its range and unit", () => {
    const svg = drawn(wearCurveChart(picture, sheet(860)));
    expect(words(svg, "one-in-ten-word").map(plain)).toEqual(["1 in 10 by 34 salt days (29 to 40)"]);
    expect(marks(drawn(wearCurveChart({ ...picture, row: beyondRow() }, sheet(860))), "one-in-ten", "circle")).toBe(0);
  });

  test("shades and names what lies beyond the longest exposure seen, and nothing where the curve ends inside", () => {
    const svg = drawn(wearCurveChart(picture, sheet(860)));
    expect([marks(svg, "beyond", "rect"), words(svg, "beyond-word")]).toEqual([1, ["beyond the records"]]);
    const inside = drawn(wearCurveChart({ ...picture, row: wearRow({ longest: 150 }) }, sheet(860)));
    expect(marks(inside, "beyond", "rect")).toBe(0);
  });

  test("shows the steps alone where there is no curve, and nothing under ten parts", () => {
    const svg = drawn(wearCurveChart({ ...picture, row: thinRow(), curve: [] }, sheet(860)));
    expect([marks(svg, "fitted", "path"), marks(svg, "steps", "path")]).toEqual([0, 1]);
    expect(wearCurveChart({ ...picture, row: wearRow({ n: 9 }) }, sheet(860))).toBeNull();
    expect(wearCurveChart({ row: thinRow(), curve: [], steps: [], rug: [] }, sheet(860))).toBeNull();
  });
});

describe("rinseChart", () => {
  test("draws never, sometimes and always with ranges, counts, and an arrow where a range leaves the records", async () => {
    const svg = drawn(rinseChart(HABITS, sheet(860)));
    expect(words(svg, "counts")).toEqual(["22 (18 to 27)", "34 (27 to 43)", "over 41"]);
    expect(words(svg, "remark")).toEqual(["74 of 130", "60 of 180", "26 of 122"]);
    expect([marks(svg, "figure-dot", "circle"), marks(svg, "open-end", "path")]).toEqual([2, 1]);
    expect(svg.textContent).toContain("salt days until 1 in 10 has failed");
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/wear-rinsing.svg");
  });

  test("says too few where a habit has no figure, and draws nothing when none has", () => {
    const none = rinsed("never", life(0.1), 6, 1);
    expect(words(drawn(rinseChart([none, ...HABITS.slice(1)], sheet(860))), "counts")[0]).toBe("too few to say");
    expect(rinseChart([none], sheet(860))).toBeNull();
    expect(rinseChart([], sheet(860))).toBeNull();
  });

  test("takes the habits in the order never, sometimes, always, and no other condition", () => {
    const mixed = [...HABITS].reverse().concat(wearRow({ group: "water: salt" }));
    expect(rinseRows(mixed).map((row) => row.group)).toEqual(["rinse: never", "rinse: sometimes", "rinse: always"]);
    const effects = ["sometimes", "not written", "never"].map((level) => effect(level, limits(2, 1, 3)));
    expect(rinseEffects([...effects, effect("never", limits(), { condition: "tier" })]).map((one) => one.level)).toEqual(["never", "sometimes"]);
  });
});

describe("gradesChart", () => {
  test("stacks five named grades, with strokes for what was seen where ten or more were inspected", async () => {
    const svg = drawn(gradesChart(GRADE_PICTURE, "salt_days", sheet(860)));
    expect(marks(svg, "layers", "path")).toBe(5);
    expect(words(svg, "grades").sort()).toEqual(["as new", "failed", "heavy", "light", "moderate"]);
    expect(marks(svg, "seen", "line")).toBe(3 * 4);
    expect(words(svg, "counts")).toEqual(["108", "122", "98", "7"]);
    await expect(standAlone(svg)).toMatchFileSnapshot("pictures/wear-grades.svg");
  });

  test("draws nothing when the grades could not be fitted", () => {
    expect(gradesChart({ ...GRADE_PICTURE, status: "too few" }, "salt_days", sheet(860))).toBeNull();
  });
});
