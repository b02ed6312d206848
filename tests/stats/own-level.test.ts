import { describe, expect, test } from "vitest";
import { designEffect, likenessOfMates, widenedShareInterval } from "../../src/stats/design-effect.ts";
import { funnelLimits } from "../../src/stats/funnel-limits.ts";
import { beyondOwn } from "../../src/stats/own-level.ts";
import { shareInterval } from "../../src/stats/share-interval.ts";

const part = (times: number, variance: number) => ({ log: Math.log(times), variance });

describe("beyondOwn", () => {
  test("a part as bad as all parts of its model is nothing of its own", () => {
    const { own_level, ratio, low } = beyondOwn(part(2, 0.04), Array.from({ length: 12 }, () => part(2, 0.04)));
    expect(own_level).toBeGreaterThan(1.8);
    expect(ratio).toBeLessThan(1.15);
    expect(low).toBeLessThan(1);
  });

  test("one bad part among sound ones stands, and the same ratio known less well does not", () => {
    const sound = Array.from({ length: 12 }, () => part(1, 0.04));
    expect(beyondOwn(part(3, 0.04), sound).p).toBeLessThan(0.001);
    expect(beyondOwn(part(3, 0.6), sound).p).toBeGreaterThan(0.1);
  });

  test("the level by hand: one part of ratio e² with variance 0.21 against the prior's 0.25", () => {
    // Weights 1/(0.21 + 0.04) = 4 and 1/0.25 = 4: level exp(2 × 4 / 8) = e.
    expect(beyondOwn(part(1, 0.1), [part(Math.exp(2), 0.21)]).own_level).toBeCloseTo(Math.E, 12);
  });

  test("impossible variances are refused", () => {
    expect(() => beyondOwn(part(1, Infinity), [])).toThrow("beyondOwn: variance must be a finite number of at least 0");
  });
});

describe("likenessOfMates and designEffect", () => {
  const batches = (list: readonly [number, number][], share: number) => ({
    share, pairs: list.reduce((sum, [, n]) => sum + n * (n - 1), 0),
    alike_failed: list.reduce((sum, [k]) => sum + k * (k - 1), 0), failed_in_pairs: list.reduce((sum, [k, n]) => sum + k * (n - 1), 0),
  });

  test("batches that fail all or none are alike, those that fail as strangers do are not", () => {
    const all_or_none = batches(Array.from({ length: 400 }, (_, i) => [i % 2 === 0 ? 4 : 0, 4]), 0.5);
    expect(likenessOfMates([all_or_none])).toBeGreaterThan(0.9);
    // Two of four in every batch: pairs agree less often than strangers would; never below nothing.
    expect(likenessOfMates([batches(Array.from({ length: 400 }, () => [2, 4]), 0.5)])).toBe(0);
  });

  test("the effect by hand: 100 inspections of which 30 came in tens, likeness 0.2", () => {
    expect(designEffect(100, 3 * 10 * 9, 0.2)).toBeCloseTo(1.54, 12);
  });

  test("limits are those of fewer inspections, and hold the share", () => {
    const [low, high] = widenedShareInterval(30, 100, 2), [once_low, once_high] = shareInterval(30, 100);
    expect([low, high]).toEqual(shareInterval(15, 50));
    expect(low < once_low && high > once_high).toBe(true);
    expect(widenedShareInterval(30, 100, 1)).toEqual(shareInterval(30, 100));
  });
});

describe("funnelLimits", () => {
  test("hold the promised share of models that fail alike, and close in with more inspections", () => {
    const [low, high] = funnelLimits(400, 0.1, 0.95);
    // Normal limits of 400 at one in ten: 0.1 ± 1.96 × 0.015.
    expect(Math.abs(low - 0.0706)).toBeLessThan(0.003);
    expect(Math.abs(high - 0.1294)).toBeLessThan(0.003);
    const widths = [10, 50, 200, 1000].map((inspected) => funnelLimits(inspected, 0.1, 0.998)).map(([from, to]) => to - from);
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
  });
});
