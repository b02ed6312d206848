import { describe, expect, test } from "vitest";
import { seededRandom, xoshiroWords } from "../../src/stats/random.ts";

describe("xoshiroWords", () => {
  test("gives the words of the authors' C program from state 1, 2, 3, 4", () => {
    // Blackman & Vigna, xoshiro128starstar.c, as pinned in the tests of the Rust crate rand_xoshiro.
    const word = xoshiroWords([1, 2, 3, 4]);
    expect(Array.from({ length: 10 }, word)).toEqual(
      [11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804]);
  });

  test("refuses a state that would give zeros for ever", () => {
    expect(() => xoshiroWords([0, 0, 0, 0])).toThrow(new RangeError("xoshiroWords: state must be four words, not all 0, got 0, 0, 0, 0"));
    expect(() => xoshiroWords([1, 2, 3])).toThrow("must be four words");
  });
});

describe("seededRandom", () => {
  test("repeats itself for the same seed and differs for neighbouring and for huge seeds", () => {
    const first = (seed: number) => seededRandom(seed)();
    expect(first(42)).toBe(first(42));
    expect(new Set([0, 1, 2, 3, 2 ** 32, 2 ** 33, 2 ** 50].map(first)).size).toBe(7);
  });

  test("fills 100 equal cells evenly and shows no lag-1 correlation", () => {
    const random = seededRandom(20260314), n = 100_000;
    const values = Array.from({ length: n }, random);
    const cells = new Array<number>(100).fill(0);
    for (const value of values) cells[Math.floor(value * 100)] = (cells[Math.floor(value * 100)] as number) + 1;
    const chiSquare = cells.reduce((sum, count) => sum + (count - n / 100) ** 2 / (n / 100), 0);
    const lag = values.slice(1).reduce((sum, value, i) => sum + (value - 0.5) * ((values[i] as number) - 0.5), 0) / (n / 12);
    expect(chiSquare).toBeGreaterThan(56); // 99 degrees of freedom: 0.01 % and 99.99 % points 55.8 and 161.3, by memory
    expect(chiSquare).toBeLessThan(161);
    expect(Math.abs(lag)).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.min(...values.slice(0, 1000))).toBeGreaterThanOrEqual(0);
    expect(values.every((value) => value < 1)).toBe(true);
  });

  test("refuses a seed that is not a whole number", () => {
    expect(() => seededRandom(1.5)).toThrow(new RangeError("seededRandom: seed must be a whole number of at least 0, got 1.5"));
  });
});
