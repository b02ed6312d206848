import { describe, expect, test } from "vitest";
import { countBand } from "../../src/stats/count-band.ts";
import { drawGamma, drawPoisson } from "../../src/stats/draws.ts";
import type { Intake } from "../../src/stats/intake-candidates.ts";
import { intakeForecast } from "../../src/stats/intake-forecast.ts";
import { seededRandom } from "../../src/stats/random.ts";
import { HORIZONS } from "../../src/stats/rolling-origin.ts";
import { readRows } from "./reference-case.ts";

const WEEKS = 365.25 / 7;
const whole = (counts: readonly (number | null)[], year = WEEKS): Intake => ({ counts, open: counts.map(() => 1), year });
// Open series, sources beside them in tests/reference/10-seasonal.
const SERIES: readonly (readonly [string, Intake])[] = [
  ["weekly Salmonella Agona", whole(readRows("10-seasonal/weekly-salmonella/data.csv").map((row) => Number(row["count"])))],
  ["monthly airline passengers", whole(readRows("10-seasonal/monthly-airpassengers/data.csv").map((row) => Number(row["value"])), 12)],
];

describe.each(SERIES)("%s", (_name, intake) => {
  test("the way chosen is nowhere worse than the same step last year on the past it was chosen on", () => {
    const { method, scores } = intakeForecast(intake, 26), at = (one: string | null, horizon: number) => scores.find((score) => score.method === one && score.horizon === horizon)?.pinball ?? NaN;
    for (const horizon of HORIZONS) expect(at(method, horizon)).toBeLessThanOrEqual(at("same week last year", horizon));
  });
});

/** Weeks with a known season and level, drawn from a seed. */
function shop(weeks: number, { seed, swing, level, spread = 0 }: { seed: number; swing: number; level: (week: number) => number; spread?: number }): Intake {
  const random = seededRandom(seed);
  return whole(Array.from({ length: weeks }, (_, t) => {
    const mean = level(t) * Math.exp(swing * Math.cos((2 * Math.PI * (t - 10)) / WEEKS));
    return drawPoisson(random, spread > 0 ? drawGamma(random, mean / spread, 1 / spread) : mean);
  }));
}
const meanOf = (intake: Intake, from: number, to: number) => intakeForecast(intake, to).ahead.slice(from, to).reduce((sum, { mean }) => sum + mean, 0) / (to - from);

describe("what a shop's history allows", () => {
  test("a northern and a southern shop get the same forecast half a year apart", () => {
    // Week 10 is the rush; a series that starts half a year later has it at week 36.
    const long = shop(210, { seed: 3, swing: 0.5, level: () => 20 }), north = { ...long, counts: long.counts.slice(0, 182), open: long.open.slice(0, 182) }, south = { ...long, counts: long.counts.slice(26, 208), open: long.open.slice(26, 208) };
    // Within a fifth.
    const near: unknown = expect.toSatisfy((ratio: number) => Math.abs(ratio - 1) < 0.2);
    const rush = 20 * Math.exp(0.5), slack = 20 * Math.exp(-0.5);
    // 182 weeks on, week 10 of the year is 36 to 37 steps ahead; 208 weeks on, it is 10 to 11.
    expect([meanOf(north, 8, 13), meanOf(south, 8, 13)].map((mean, i) => mean / (i === 0 ? slack : rush))).toEqual([near, near]);
  });

  test("a shop whose intake doubled half a year ago is not told its old weeks", () => {
    const weeks = 182, doubled = shop(weeks, { seed: 5, swing: 0, level: (t) => (t < weeks - 26 ? 10 : 20) });
    expect(meanOf(doubled, 0, 4)).toBeGreaterThan(15);
  });

  test("under a year it is flat, says so, and its range holds a season it cannot see", () => {
    const intake = shop(40, { seed: 8, swing: 0, level: () => 20 }), { status, method, ahead, scores } = intakeForecast(intake, 26);
    expect([status, method, scores]).toEqual(["under a year", "flat", []]);
    expect(new Set(ahead.map(({ mean }) => mean)).size).toBe(1);
    const { low, high } = countBand(ahead[0] ?? { mean: 0, size: 1 }, 0.8);
    expect([low < 20 * 0.65, high > 20 * 1.4]).toEqual([true, true]);
  });

  test.each([[1], [3]])("%d weeks say nothing", (weeks) => {
    expect(intakeForecast(shop(weeks, { seed: 1, swing: 0, level: () => 20 }), 26)).toMatchObject({ status: "too few steps", method: null, ahead: [] });
  });

  test("one to two years are flagged, and not chosen from", () => {
    expect(intakeForecast(shop(80, { seed: 2, swing: 0.4, level: () => 15 }), 26)).toMatchObject({ status: "one to two years", method: "curve and recent weeks" });
  });

  test("closed weeks are no weeks without reels: leaving out every tenth week changes the mean little", () => {
    const intake = shop(182, { seed: 4, swing: 0, level: () => 20 });
    const holes = { ...intake, counts: intake.counts.map((count, t) => (t % 10 === 3 ? null : count)), open: intake.open.map((one, t) => (t % 10 === 3 ? 0 : one)) };
    expect(meanOf(holes, 0, 13) / 20).toBeGreaterThan(0.9);
  });

  test("a shop without a single reel gets no number that is none", () => {
    const { ahead } = intakeForecast(whole(new Array<number>(200).fill(0)), 13);
    expect(ahead.every(({ mean, size }) => Number.isFinite(mean) && mean < 0.5 && size > 0)).toBe(true);
  });
});
