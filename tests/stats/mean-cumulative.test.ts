import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { meanCumulative } from "../../src/stats/mean-cumulative.ts";
import type { Watched } from "../../src/stats/mean-cumulative.ts";
import { laplaceTrend, lewisRobinson, powerTrend } from "../../src/stats/trend-tests.ts";
import { expectNear, numberOf, numbersOf, readCase } from "./reference-case.ts";
import type { Nested } from "./reference-case.ts";

/** Units of a reference case: a row with status 1 is an event, the largest time of a unit its end. */
function watchedOf(rows: readonly Record<string, string>[], keep: (row: Record<string, string>) => boolean = () => true): Watched[] {
  const units = new Map<string, { end: number; events: number[] }>();
  for (const row of rows.filter(keep)) {
    const name = row["unit"] ?? row["serial"] ?? "", time = Number(row["time"] ?? row["days_in_service"]), unit = units.get(name) ?? { end: 0, events: [] };
    unit.end = Math.max(unit.end, time);
    if (row["status"] === "1" || row["failed"] === "yes") unit.events.push(time);
    units.set(name, unit);
  }
  return [...units.values()].filter(({ end }) => end > 0);
}

const bladder = readCase("05-recurrent/bladder-recurrences"), cgd = readCase("05-recurrent/cgd-infections"), repeat = readCase("15-records/repeat-failures");
const CASES: [string, Watched[], Nested][] = [
  ["bladder recurrences (ties between units)", watchedOf(bladder.rows), bladder.expected.values],
  ["infections, all", watchedOf(cgd.rows), cgd.expected.values["all"] as Nested],
  ["infections, placebo", watchedOf(cgd.rows, (row) => row["group"] === "placebo"), (cgd.expected.values["by_group"] as Nested)["placebo"] as Nested],
  ["repeated repair tickets of one part", watchedOf(repeat.rows), repeat.expected.values],
];

describe.each(CASES)("meanCumulative of %s", (_name, watched, values) => {
  const curve = meanCumulative(watched), relative = 1e-7;

  test("ages, reels at risk and events are those of the data", () => {
    expect(watched.length).toBe(values["units"]);
    expect(curve.map(({ time }) => time)).toEqual(values["time"]);
    expect(curve.map(({ at_risk }) => at_risk)).toEqual(values["at_risk"]);
    expect(curve.map(({ events }) => events)).toEqual(values["events_at_time"]);
  });

  test("means, both standard errors and the limits equal R's survival package", () => {
    for (const [property, column] of [["mean", "mcf"], ["se", "se_robust"], ["se_poisson", "se_poisson"], ["low", "lo_log"], ["high", "hi_log"]] as const) {
      expectNear(curve.map((one) => one[property]), numbersOf(values[column]), { relative }, column);
    }
  });

});

test.each(CASES.filter(([, , values]) => "trend" in values))("pooled Laplace and power-law trend of %s equal R's", (_name, watched, values) => {
  const trend = values["trend"] as Nested, laplace = laplaceTrend(watched), power = powerTrend(watched);
  expectNear([laplace.statistic, laplace.p, power.statistic, power.degrees, power.p, power.shape],
    ["laplace_U", "laplace_p_two_sided", "mil_hdbk_189_chi2", "df", "mil_p_two_sided", "power_law_beta_ml"].map((key) => numberOf(trend[key])), { relative: 1e-7 });
});

describe("meanCumulative", () => {
  test("one pass gives the same robust error as the definition, for any reels", () => {
    const reel = fc.record({ end: fc.integer({ min: 1, max: 12 }), events: fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 4 }) })
      .map(({ end, events }) => ({ end, events: events.filter((age) => age <= end) }));
    fc.assert(fc.property(fc.array(reel, { minLength: 1, maxLength: 12 }), (watched) => {
      const ages = [...new Set(watched.flatMap(({ events }) => events))].sort((a, b) => a - b), sums = watched.map(() => 0);
      for (const [i, age] of ages.entries()) {
        const at_risk = watched.filter(({ end }) => end >= age).length, count = (unit: Watched) => unit.events.filter((one) => one === age).length;
        const step = watched.reduce((sum, unit) => sum + count(unit), 0) / at_risk;
        watched.forEach((unit, j) => { if (unit.end >= age) sums[j] = (sums[j] as number) + (count(unit) - step) / at_risk; });
        expect(meanCumulative(watched)[i]?.se).toBeCloseTo(Math.sqrt(sums.reduce((sum, one) => sum + one ** 2, 0)), 7);
      }
    }), { seed: 6, numRuns: 60 });
  });

  test("failures beyond the end of watching are refused", () => {
    expect(() => meanCumulative([{ end: 5, events: [6] }])).toThrow(new RangeError("meanCumulative: events must lie in 0…end, got 6 with end 5"));
    expect(meanCumulative([{ end: 5, events: [] }])).toEqual([]);
  });
});

describe.each(["05-recurrent/trend-nist", "05-recurrent/trend-coal-mining"])("trend of %s", (name) => {
  const { rows, expected } = readCase(name), end = Number(rows[0]?.["end"]), events = rows.map((row) => Number(row["time"]));
  const of = (...keys: string[]) => keys.map((key) => numberOf(expected.values[key]));

  test("Laplace, MIL-HDBK-189 with its shape, and Lewis–Robinson equal R's", () => {
    const laplace = laplaceTrend([{ end, events }]), power = powerTrend([{ end, events }]);
    expectNear([laplace.statistic, laplace.p], of("laplace_U", "laplace_p_two_sided"), { relative: 1e-7 });
    expectNear([power.statistic, power.degrees, power.shape], of("mil_hdbk_189_chi2", "df", "beta_ml"), { relative: 1e-7 });
    expectNear([power.p], of("mil_p_two_sided"), { relative: 1e-6 });
    expectNear([lewisRobinson(events).statistic], of("lewis_robinson"), { relative: 1e-7 });
  });
});

describe("trends that cannot be told", () => {
  test("no failure, a failure at age 0 and alike gaps give nothing instead of a number", () => {
    expect(laplaceTrend([{ end: 9, events: [] }])).toEqual({ statistic: null, p: null });
    expect(powerTrend([{ end: 9, events: [0, 3] }])).toMatchObject({ statistic: null, shape: null });
    expect(lewisRobinson([1, 2])).toEqual({ statistic: null, p: null });
    expect(lewisRobinson([2, 4, 6])).toEqual({ statistic: null, p: null });
    expect(() => laplaceTrend([])).toThrow("laplaceTrend: lines must not be empty");
  });
});
