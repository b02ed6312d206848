import { expect, test } from "vitest";
import { departingLife } from "../../src/stats/departing-life.ts";
import { packLines } from "../../src/stats/life-lines.ts";
import type { LifeLine } from "../../src/stats/life-lines.ts";
import { hasCurve, weibullLife } from "../../src/stats/weibull-life.ts";
import { weibullLikelihood } from "../../src/stats/weibull-likelihood.ts";

const seen: LifeLine[] = [0, 1].flatMap((x) => [8, 20, 45].flatMap((days): LifeLine[] => [
  { low: 0, high: days, count: 2 + x, x: [x] }, { low: days, high: Infinity, count: 9 - days / 9, x: [x] }, { low: days / 2, high: days, count: 1, x: [x] }]));

test("with every kind of line it is the likelihood of parts that last so many times as long", () => {
  const fit = weibullLife(seen);
  if (!hasCurve(fit)) throw new Error(fit.status);
  const some: LifeLine[] = [{ low: 0, high: 6, count: 2, x: [1] }, { low: 15, high: Infinity, entry: 5, x: [0] }, { low: 12, high: 12, x: [1] }, { low: 4, high: 30, count: 3, x: [0] }];
  // Parts that last c times as long are parts whose exposures are divided by c; an exact failure has c times the density to undo.
  for (const times of [0.5, 1, 3]) {
    const packed = packLines(some.map((line) => ({ ...line, low: line.low / times, high: line.high / times, entry: (line.entry ?? 0) / times })));
    const a = (fit.theta[0] as number) + fit.shape * Math.log(packed.unit / fit.packed.unit), value = weibullLikelihood(packed, [a, ...fit.theta.subarray(1)]).value - Math.log(times);
    expect(departingLife(some, fit)(Math.log(times))).toBeCloseTo(value, 9);
  }
});

test("nothing is known of parts that were only fitted", () => {
  const fit = weibullLife(seen);
  if (!hasCurve(fit)) throw new Error(fit.status);
  expect(departingLife([], fit)(1)).toBe(0);
});
