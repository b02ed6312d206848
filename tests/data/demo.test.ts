import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { past } from "../../data/demo-shop/shop.ts";
import type { Past } from "../../data/demo-shop/shop.ts";
import { TRUTHS, worldWithout } from "../../data/demo-shop/truths.ts";
import type { World } from "../../data/demo-shop/truths.ts";
import { DEMO_SEED, demoFiles } from "../../data/make-demo.ts";
import { JOBS, MONTHS, TRUTHS_SHOW, VOLUMES } from "./demo-expected.ts";
import type { Expected } from "./demo-expected.ts";
import { failedShares, jobShares, medianMinutes, monthIndex, truths, volumes } from "./demo-measures.ts";

const SEEDS = [1, 2, 3, 4, 5, 6];
const HERE = import.meta.dirname;

/** Six shops, lived once for all tests of this file. */
let lived: Past[] | undefined;
const shops = (): Past[] => (lived ??= SEEDS.map((seed) => past(seed, [])));

/**
 * The extremes of eight runs lie about 2.85 standard deviations apart. A single shop may be three quarters of that width beyond
 * either end (3.6 deviations from the middle: one false alarm in ten whole runs of these 300 checks); a mean of six an eighth.
 */
const SINGLE = 0.75, MEAN = 0.125;
const beyond = (value: number, { low, high }: Expected, allowance: number) => value < low - allowance * (high - low) || value > high + allowance * (high - low);
const beyondSingle = (value: number, range: Expected) => (range.single ? value < range.single[0] || value > range.single[1] : beyond(value, range, SINGLE));

function misses(expected: readonly Expected[], measure: (shop: Past) => Record<string, number>): string[] {
  const measured = shops().map(measure);
  return expected.flatMap((range) => {
    const values = measured.map((one) => one[range.name] ?? NaN), mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const single = values.filter((value) => !(value >= 0) || beyondSingle(value, range)), said = values.map((value) => value.toFixed(2)).join(" ");
    return single.length > 0 || beyond(mean, range, MEAN) ? [`${range.name} ${range.low}–${range.high}: mean ${mean.toFixed(2)} of ${said}`] : [];
  });
}

describe("the demo shop over six seeds", () => {
  test("has the tickets, people, waters, habits and reasons to come in of the eight runs", () => {
    expect(misses(VOLUMES, volumes)).toEqual([]);
  });

  test("has the mix of jobs of the eight runs", () => {
    expect(misses(JOBS, jobShares)).toEqual([]);
  });

  test("has the season of the eight runs: within 0.08 in each month's mean, 0.2 in any one shop", () => {
    const indices = shops().map(monthIndex);
    const wrong = MONTHS.filter((index, month0) => {
      const values = indices.map((one) => one[month0] ?? NaN), mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return !(Math.abs(mean - index) < 0.08) || values.some((value) => Math.abs(value - index) > 0.2);
    });
    expect(wrong).toEqual([]);
  });

  test("fails each position as often a year as the eight runs, and as often per opening where jobs open no more than there", () => {
    const rows = Papa.parse<Record<string, string>>(readFileSync(resolve(HERE, "expected-positions.csv"), "utf8"), { header: true, skipEmptyLines: true }).data;
    expect(rows).toHaveLength(39);
    const found = shops().map(failedShares), years = 3 * SEEDS.length;
    const wrong = rows.flatMap((row) => {
      const position = row["position"] ?? "", counts = found.map((shares) => shares.get(position) ?? { opened: 0, failed: 0 });
      const failed = counts.reduce((sum, one) => sum + one.failed, 0), opened = counts.reduce((sum, one) => sum + one.opened, 0);
      // A failure counts once for the reel, so Poisson widths; the eight runs' own mean is uncertain by about as much.
      const expected = Number(row["failed_yr"]) * years, width = 0.08 * expected + 3 * Math.sqrt(2 * expected);
      const wider = opened / years > 1.06 * Number(row["opened_yr"]), share = (100 * failed) / opened;
      const pinches = position === "body_seal", off_share = !wider && Math.abs(share / Number(row["failed_pct"]) - 1) > 0.08 + 3 * Math.sqrt(2 / expected);
      return !pinches && (Math.abs(failed - expected) > width || off_share) ? [`${position}: ${(failed / years).toFixed(1)} a year for ${row["failed_yr"] ?? ""}, ${share.toFixed(1)} %`] : [];
    });
    expect(wrong).toEqual([]);
  });

  test("takes the minutes of the eight runs at the median of each common job", () => {
    const rows = Papa.parse<Record<string, string>>(readFileSync(resolve(HERE, "expected-minutes.csv"), "utf8"), { header: true, skipEmptyLines: true }).data;
    const found = medianMinutes(shops().flatMap((shop) => shop.visits));
    const wrong = rows.filter((row) => {
      const { n, median } = found.get(row["job_kind"] ?? "") ?? { n: 0, median: NaN };
      // Standard error of a log-normal's median with the widest sigma of the settings, 0.35.
      return !(Math.abs(Math.log(median / Number(row["median_min"]))) < 0.03 + (3 * 1.2533 * 0.4) / Math.sqrt(n));
    });
    expect(rows).toHaveLength(22);
    expect(wrong).toEqual([]);
  });

  test("shows every planted truth as the eight runs did", () => {
    expect(misses(TRUTHS_SHOW, truths)).toEqual([]);
  });
});

describe("planted truths", () => {
  /** Truths that do not touch each other's figures are left out together, to live fewer shops. */
  const TOGETHER = [["PT1", "PT7", "PT10", "PT11", "PT13", "PT14"], ["PT2", "PT3", "PT4", "PT12"], ["PT5", "PT6", "PT9"], ["PT8"], ["PT15"]];
  const SHOWN_BY: Readonly<Record<string, string>> = {
    PT1: "PT1 Whinbeck %", PT2: "PT2 Ekholt %", PT3: "PT3 a year", PT4: "PT4 batch %", PT5: "PT5 never", PT6: "PT6 complaint %", PT7: "PT7 2023", PT8: "PT8 March",
    PT9: "PT9 a year", PT10: "PT10 after %", PT11: "PT11 short", PT12: "PT12 a year", PT13: "PT13 Far Lantern", PT14: "PT14 years at 1.5 a year", PT15: "PT15 other %",
  };

  test("each code turns exactly one switch, and all of them together every switch", () => {
    const whole = worldWithout([]), none = worldWithout("all"), keys = Object.keys(whole) as (keyof World)[];
    const changed = TRUTHS.map(({ code }) => keys.filter((key) => JSON.stringify(worldWithout([code])[key]) !== JSON.stringify(whole[key])));
    expect(changed.map((one) => one.length)).toEqual(TRUTHS.map(() => 1));
    expect(new Set(changed.flat()).size).toBe(15);
    expect(keys.filter((key) => JSON.stringify(none[key]) === JSON.stringify(whole[key]))).toEqual([]);
    expect(() => worldWithout(["PT16"])).toThrow(RangeError);
  });

  test("a truth that is left out no longer shows, even within a single shop's range", () => {
    expect(TOGETHER.flat().sort()).toEqual(TRUTHS.map(({ code }) => code).sort());
    const still = TOGETHER.flatMap((codes) => {
      const shown = truths(past(1, codes));
      return codes.filter((code) => {
        const range = TRUTHS_SHOW.find(({ name }) => name === SHOWN_BY[code]), value = shown[SHOWN_BY[code] ?? ""];
        return !range || value === undefined || !beyondSingle(value, range);
      });
    });
    expect(still).toEqual([]);
  });
});

describe("the committed demo", () => {
  test("shows every planted truth near the middle: within an eighth of the eight runs' width", () => {
    const shown = truths(past(DEMO_SEED, []));
    expect(TRUTHS_SHOW.filter((range) => beyond(shown[range.name] ?? NaN, range, MEAN) || shown[range.name] === undefined)).toEqual([]);
  });

  test("is what its seed gives, to the byte", () => {
    const hash = (text: string) => createHash("sha256").update(text).digest("hex");
    const files = demoFiles(DEMO_SEED), folder = resolve(HERE, "../../data/demo");
    expect([...files].filter(([name, text]) => hash(text) !== hash(readFileSync(resolve(folder, name), "utf8"))).map(([name]) => name)).toEqual([]);
    expect(files.size).toBe(8);
    expect([...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0)).toBeLessThan(2_000_000);
  });
});
