import { describe, expect, test } from "vitest";
import { drawLogNormal, drawNormal } from "../../src/stats/draws.ts";
import { pooledTimes } from "../../src/stats/pooled-times.ts";
import { seededRandom } from "../../src/stats/random.ts";

/** Twelve models with one to nine jobs each; logarithms spread by 0.2 between models and 0.4 within. */
function shop(random: () => number) {
  return Array.from({ length: 12 }, () => {
    const logMedian = Math.log(45) + drawNormal(random, 0, 0.2);
    return { logMedian, minutes: Array.from({ length: 1 + Math.floor(random() * 9) }, () => drawLogNormal(random, logMedian, 0.4)) };
  });
}

describe("pooledTimes", () => {
  test("the next job stays under P80 in four cases of five, and the median lies in its range in 19 of 20", () => {
    const random = seededRandom(23);
    let under = 0, inside = 0, all = 0;
    for (let turn = 0; turn < 150; turn += 1) {
      const models = shop(random), pooled = pooledTimes(models.map((model) => model.minutes));
      if ("reason" in pooled) throw new Error(pooled.reason);
      pooled.times.forEach(({ p80, medianLow, medianHigh }, i) => {
        const { logMedian } = models[i] as (typeof models)[number];
        all += 1;
        if (drawLogNormal(random, logMedian, 0.4) <= p80) under += 1;
        if (medianLow <= Math.exp(logMedian) && Math.exp(logMedian) <= medianHigh) inside += 1;
      });
    }
    expect(Math.abs(under / all - 0.8)).toBeLessThan(0.03);
    expect(Math.abs(inside / all - 0.95)).toBeLessThan(0.03);
  });

  test("the unit of time changes the figures by its factor only", () => {
    const groups = [[30, 40, 35], [60, 80], [45, 50, 55], [38], [52, 61]], minutes = pooledTimes(groups);
    const hours = pooledTimes(groups.map((group) => group.map((time) => time / 60)));
    if ("reason" in minutes || "reason" in hours) throw new Error("no pooling");
    minutes.times.forEach(({ median, p80 }, i) => {
      expect((hours.times[i]?.median ?? 0) * 60).toBeCloseTo(median, 4);
      expect((hours.times[i]?.p80 ?? 0) * 60).toBeCloseTo(p80, 4);
    });
  });

  test("a time of zero was to be set aside before, and is refused", () => {
    expect(() => pooledTimes([[30, 0]])).toThrow(new RangeError("pooledTimes: time must be a finite number above 0, got 0"));
    expect(pooledTimes([[30, 30], [40, 40]])).toEqual({ reason: "no spread within groups" });
  });
});
