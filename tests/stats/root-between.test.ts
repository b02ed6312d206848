import { describe, expect, test } from "vitest";
import { maximumBetween } from "../../src/stats/maximum-between.ts";
import { rootBetween } from "../../src/stats/root-between.ts";

describe("rootBetween", () => {
  test.each([
    ["a straight line", (x: number) => 3 * x - 1, 1 / 3],
    ["a flat cubic", (x: number) => (x - 0.25) ** 3, 0.25],
    ["a steep exponential", (x: number) => Math.exp(60 * (x - 0.7)) - 1, 0.7],
    ["a root next to zero", (x: number) => x - 1e-12, 1e-12],
    ["an end of the bracket", (x: number) => x, 0],
  ])("finds the root of %s", (_name, f, root) => {
    expect(Math.abs(rootBetween(f, 0, 1) - root)).toBeLessThan(1e-15 + 1e-5 * Number(root === 0.25));
  });

  test("refuses ends on the same side of zero, and values that are none", () => {
    expect(() => rootBetween((x) => x + 1, 0, 1)).toThrow(new RangeError("rootBetween: f must have unlike signs at 0 and 1, got 1 and 2"));
    expect(() => rootBetween(() => NaN, 0, 1)).toThrow("got NaN and NaN");
  });
});

describe("maximumBetween", () => {
  test("finds the higher of two hills and a maximum at an end", () => {
    const hills = (x: number) => Math.exp(-((x - 1) ** 2)) + 1.2 * Math.exp(-((x - 6) ** 2));
    expect(maximumBetween(hills, 0, 8).at).toBeCloseTo(6, 6);
    expect(maximumBetween((x) => x, 0, 8).at).toBeCloseTo(8, 6);
    expect(maximumBetween((x) => -x, 0, 8).at).toBeCloseTo(0, 6);
  });

  test("refuses a range that is none", () => {
    expect(() => maximumBetween((x) => x, 2, 2)).toThrow(new RangeError("maximumBetween: low must be below high, got 2 and 2"));
  });
});
