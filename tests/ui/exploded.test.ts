import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { apart } from "../../src/ui/apart.ts";
import { drawnAxes, SHARE_STEPS, shareTone } from "../../src/ui/exploded/drawn-part.ts";
import { SHAPE_NAMES, strokesOf } from "../../src/ui/exploded/part-shapes.ts";
import { REEL_LAYOUTS } from "../../src/ui/exploded/reel-layouts.ts";

const [head = "", ...lines] = readFileSync(new URL("../../data/vocabulary/positions.csv", import.meta.url), "utf8").trim().split(/\r?\n/);
const cells = (line: string) => [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");
const column = (name: string) => cells(head).indexOf(name);
const positions = lines.map(cells).map((row) => ({ position: row[column("position")] ?? "", group: row[column("group")] ?? "", kinds: (row[column("reel_kinds")] ?? "").split(";") }));

describe("reel layouts", () => {
  test("place every part of the list on every kind of reel that has it, grease and line aside", () => {
    const missing = Object.entries(REEL_LAYOUTS).flatMap(([kind, axes]) => {
      const placed = new Set(axes.flatMap(({ parts }) => parts.map(([position]) => position)));
      return positions.filter((one) => one.group !== "CN" && one.kinds.includes(kind) && !placed.has(one.position)).map((one) => `${kind}: ${one.position}`);
    });
    expect(missing).toEqual([]);
  });

  test("name no part that the list does not know, and none twice on one reel", () => {
    const known = new Set(positions.map(({ position }) => position));
    for (const axes of Object.values(REEL_LAYOUTS)) {
      const placed = axes.flatMap(({ parts }) => parts.map(([position]) => position));
      expect(placed.filter((position) => !known.has(position))).toEqual([]);
      expect(new Set(placed).size).toBe(placed.length);
    }
  });
});

describe("part shapes", () => {
  test("stay inside the space a part has, so that no line is cut off", () => {
    for (const shape of SHAPE_NAMES) {
      const starts = strokesOf(shape).flatMap(({ d }) => [...d.matchAll(/[ML](-?[\d.]+)[ ,]?(-?[\d.]+)/g)].map(([, x, y]) => [Math.abs(Number(x)), Math.abs(Number(y))]));
      expect(Math.max(...starts.map(([x = 0]) => x)), shape).toBeLessThanOrEqual(35);
      expect(Math.max(...starts.map(([, y = 0]) => y)), shape).toBeLessThanOrEqual(24);
    }
  });

  test("hold only numbers that an SVG can read", () => {
    for (const shape of SHAPE_NAMES) for (const { d } of strokesOf(shape)) expect(d, shape).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe("drawnAxes", () => {
  const part = (position: string) => ({ position, name: position, figures: "", word: null, tone: "plain" as const, href: "" });
  test("keeps the parts in the order they come off, and leaves out axes of which nothing is known", () => {
    const axes = drawnAxes("spinning", ["line_roller_bearing", "main_gear", "line_roller_screw"].map(part));
    expect(axes.map(({ title, parts }) => [title, parts.map(({ position }) => position)])).toEqual([["Line roller", ["line_roller_screw", "line_roller_bearing"]], ["Drive gear", ["main_gear"]]]);
  });

  test("draws nothing for a kind of reel that has no view", () => expect(drawnAxes("other", [part("main_gear")])).toEqual([]));
});

describe("shareTone", () => {
  test("hatches what is too few, and steps up with the share", () => {
    expect([null, 0, 0.02, 0.0999, 0.1, 0.2, 1].map(shareTone)).toEqual(["few", "step-1", "step-2", "step-3", "step-4", "step-5", "step-5"]);
    expect(SHARE_STEPS.map(({ under }) => under)).toEqual([...SHARE_STEPS.map(({ under }) => under)].sort((a, b) => a - b));
  });
});

describe("apart", () => {
  test("moves only places that are too close, keeps their order, and gives no two less than the gap", () => {
    expect(apart([100, 10, 200], 8)).toEqual([100, 10, 200]);
    const moved = apart([50, 51, 52, 60, 300], 10);
    for (let i = 1; i < moved.length; i += 1) expect((moved[i] ?? 0) - (moved[i - 1] ?? 0)).toBeGreaterThanOrEqual(10 - 1e-9);
    expect(moved[4]).toBe(300);
  });
});
