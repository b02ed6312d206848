import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mantelHaenszel } from "../../src/stats/mantel-haenszel.ts";
import { expectedFailures, standardisedRatio } from "../../src/stats/standardised-ratio.ts";
import { expectNear, numbersOf, readCase } from "./reference-case.ts";

const stratum = (failed: number, inspected: number, others_failed: number, others_inspected: number) =>
  ({ failed, inspected, others_failed, others_inspected });

/** Admitted of men and women by department, Berkeley 1973 (Bickel et al. 1975, Science 187:398-404); women stand for the others. */
const BERKELEY = [
  stratum(512, 825, 89, 108), stratum(353, 560, 17, 25), stratum(120, 325, 202, 593),
  stratum(138, 417, 131, 375), stratum(53, 191, 94, 393), stratum(22, 373, 24, 341),
];

describe("mantelHaenszel", () => {
  test("the test of the Berkeley admissions equals R's", () => {
    // R's mantelhaen.test(UCBAdmissions): 1.4269 with continuity correction (value from memory of its printed output); ours has none.
    const { excess, variance, p } = mantelHaenszel(BERKELEY);
    expect((Math.abs(excess) - 0.5) ** 2 / variance).toBeCloseTo(1.4269, 3);
    expect(p).toBeGreaterThan(0.2);
    expect(p).toBeLessThan(0.2323);
  });

  test("one stratum gives the plain ratio of shares with the usual standard deviation of its logarithm", () => {
    // Katz et al. (1978, Biometrics 34:469-474): var ln ratio = 1/a − 1/n + 1/b − 1/m.
    const { ratio, log_sd, low } = mantelHaenszel([stratum(8, 20, 10, 50)]);
    expect(ratio).toBeCloseTo(2, 12);
    expect(log_sd).toBeCloseTo(Math.sqrt(1 / 8 - 1 / 20 + 1 / 10 - 1 / 50), 12);
    expect(low).toBeCloseTo(2 * Math.exp(-1.959963984540054 * Math.sqrt(0.155)), 10);
  });

  test("two strata by hand: ratio, variance and excess", () => {
    // R = 4·10/20 + 3·30/40 = 4.25; Q = 2·10/20 + 6·10/40 = 2.5; P = (10·10·6 − 4·2·20)/400 + (10·30·9 − 3·6·40)/1600 = 1.1 + 1.2375.
    const { ratio, log_sd, excess, variance } = mantelHaenszel([stratum(4, 10, 2, 10), stratum(3, 10, 6, 30)]);
    expect(ratio).toBeCloseTo(1.7, 12);
    expect(log_sd).toBeCloseTo(Math.sqrt(2.3375 / (4.25 * 2.5)), 12);
    // 4 − 10·6/20 + 3 − 10·9/40 = 1.75; 10·10·6·14/(400·19) + 10·30·9·31/(1600·39).
    expect(excess).toBeCloseTo(1.75, 12);
    expect(variance).toBeCloseTo(8400 / 7600 + 83700 / 62400, 12);
  });

  test("a mix of conditions that makes all the difference is taken out", () => {
    // Both fail 50 % in salt and 10 % in fresh water; one lives mostly in salt, the other mostly in fresh.
    const strata = [stratum(40, 80, 10, 20), stratum(2, 20, 8, 80)];
    expect((42 / 100) / (18 / 100)).toBeGreaterThan(2.3);
    expect(mantelHaenszel(strata).ratio).toBeCloseTo(1, 12);
  });

  test("strata with one side only change nothing, and with nothing alike there is no ratio", () => {
    const alone = [stratum(3, 9, 0, 0), stratum(0, 0, 5, 9)];
    expect(mantelHaenszel([...BERKELEY, ...alone])).toEqual(mantelHaenszel(BERKELEY));
    expect(mantelHaenszel(alone)).toMatchObject({ status: "nothing alike", ratio: null, low: null, inspected: 0, p: 1 });
    expect(mantelHaenszel([stratum(3, 9, 0, 9)])).toMatchObject({ status: "no failure to compare", ratio: null, failed: 3 });
  });

  test("limits widen as inspections are worth less, and the ratio stays", () => {
    const once = mantelHaenszel(BERKELEY), widened = mantelHaenszel(BERKELEY, { widen: 2 });
    expect(widened.ratio).toBe(once.ratio);
    expect((widened.log_sd ?? 0) / (once.log_sd ?? 1)).toBeCloseTo(Math.SQRT2, 12);
    expect(widened.p).toBeGreaterThan(once.p);
  });

  test("swapping the sides turns the ratio over", () => {
    const count = fc.integer({ min: 1, max: 30 });
    fc.assert(fc.property(fc.array(fc.tuple(count, count, count, count), { minLength: 1, maxLength: 5 }), (list) => {
      const strata = list.map(([a, b, c, d]) => stratum(a, a + b, c, c + d)), turned = list.map(([a, b, c, d]) => stratum(c, c + d, a, a + b));
      const one = mantelHaenszel(strata), other = mantelHaenszel(turned);
      expect((one.ratio ?? NaN) * (other.ratio ?? NaN)).toBeCloseTo(1, 9);
      expect(one.log_sd).toBeCloseTo(other.log_sd ?? NaN, 9);
    }), { seed: 4, numRuns: 60 });
  });

  test("impossible counts are refused", () => {
    expect(() => mantelHaenszel([stratum(5, 4, 0, 3)])).toThrow(new RangeError("mantelHaenszel: failed must be a whole number in 0…4, got 5"));
    expect(() => mantelHaenszel([stratum(1, 4, 0, 3)], { widen: 0 })).toThrow("widen must be a finite number above 0");
  });
});

describe("standardisedRatio", () => {
  // tests/reference/01-intervals/poisson-rates: mid-p limits by R, the exposure standing for what is expected.
  const { rows, expected } = readCase("01-intervals/poisson-rates");

  test("limits of every row equal R's mid-p limits", () => {
    const level = expected.values["level_0.95"] as Record<string, unknown>, tolerance = { relative: 1e-8, absolute: 1e-12 };
    const ratios = rows.map((row) => standardisedRatio(Number(row["events"]), Number(row["exposure"])));
    expectNear(ratios.map(({ low }) => low), numbersOf(level["midp_lo"]), tolerance, "low");
    expectNear(ratios.map(({ high }) => high), numbersOf(level["midp_hi"]), tolerance, "high");
  });

  test("a count from batches has wider limits round the same ratio", () => {
    const once = standardisedRatio(20, 10), widened = standardisedRatio(20, 10, { widen: 2 });
    expect(widened.value).toBe(2);
    expect((widened.low ?? 9) < (once.low ?? 0) && (widened.high ?? 0) > (once.high ?? 9)).toBe(true);
  });
});

describe("expectedFailures", () => {
  test("takes each condition's share from the others, and leaves out what has no others", () => {
    // By hand: 10 × 5/50 + 20 × 4/10 = 9.
    expect(expectedFailures([stratum(3, 10, 5, 50), stratum(9, 20, 4, 10), stratum(7, 8, 0, 0)])).toEqual({ observed: 12, expected: 9, inspected: 30 });
  });
});
