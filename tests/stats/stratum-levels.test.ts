import { describe, expect, test } from "vitest";
import { stratumLevels } from "../../src/stats/stratum-levels.ts";
import type { Cell } from "../../src/stats/stratum-levels.ts";

const cell = (stratum: number, kind: number, n: number, mean: number): Cell => ({ stratum, kind, n, mean });

describe("levels of strata with kinds held alike", () => {
  test("are what R's weighted lm(y ~ s + k) gives, told around the mean over all that was measured", () => {
    // R 4.2.2: e <- c(0, coef(m)[c("s1", "s2")]); w <- tapply(n, s, sum); e - sum(w * e) / sum(w)
    const levels = stratumLevels([cell(0, 0, 10, 3.1), cell(0, 1, 3, 3.9), cell(1, 0, 4, 3.4), cell(1, 1, 12, 4.3), cell(2, 1, 5, 3.6), cell(2, 2, 8, 2.8), cell(2, 0, 2, 2.9)]);
    [-0.0355813436156, 0.3273060952098, -0.3182893370903].forEach((level, i) => expect(levels[i]).toBeCloseTo(level, 11));
  });

  test("do not take the mix of kinds for a level: by hand, both kinds are 1 higher in the second stratum whatever it mostly gets", () => {
    // Plain means are (9 × 2 + 1 × 5) / 10 = 2.3 and (1 × 3 + 9 × 6) / 10 = 5.7: 3.4 apart.
    const [first = NaN, second = NaN] = stratumLevels([cell(0, 0, 9, 2), cell(0, 1, 1, 5), cell(1, 0, 1, 3), cell(1, 1, 9, 6)]);
    expect([first, second].map((level) => Math.round(level * 1e12) / 1e12)).toEqual([-0.5, 0.5]);
  });

  test("are told apart only among strata that hang together by kinds they share; one alone has level 0", () => {
    expect(stratumLevels([cell(0, 0, 3, 4.123)])).toEqual([0]);
    const levels = stratumLevels([cell(0, 0, 1, 1), cell(1, 0, 3, 5), cell(2, 1, 7, 100), cell(4, 2, 1, 8), cell(4, 1, 1, 8)]);
    // Strata 0 and 1 share kind 0: around (1 + 3 × 5) / 4 = 4. Strata 2 and 4 share kind 1, 92 apart: 4 has a kind of its own beside, which tells nothing.
    [-3, 1, 92 * 2 / 9, 0, -92 * 7 / 9].forEach((level, i) => expect(levels[i]).toBeCloseTo(level, 9));
    expect(stratumLevels([])).toEqual([]);
  });

  test("refuse counts of nothing and means that are none", () => {
    expect(() => stratumLevels([cell(0, 0, 0, 1)])).toThrow("stratumLevels: n must be a whole number of at least 1, got 0");
    expect(() => stratumLevels([cell(0, 0, 1, NaN)])).toThrow("stratumLevels: mean must hold finite numbers only, got NaN");
  });
});
