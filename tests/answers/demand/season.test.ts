import { describe, expect, test } from "vitest";
import { blockDays, blockOf, between } from "../../../src/answers/demand/four-weeks.ts";
import { fullYears, indexAhead, seasonProfile } from "../../../src/answers/demand/season-profile.ts";
import { dayAfter, daysFrom } from "../../../src/answers/days.ts";

describe("blockOf", () => {
  test("counts four weeks back, thirteen a year, the odd days in the last of a year", () => {
    expect([0, 27, 28, 335, 336, 365].map(blockOf)).toEqual([0, 0, 1, 11, 12, 12]);
    expect([366, 393, 394, 730, 731, 1095, 1096, 1461].map(blockOf)).toEqual([13, 13, 14, 25, 26, 38, 39, 52]);
  });

  test("puts days thirteen blocks apart within two days of the same day of the year", () => {
    for (const newest of ["2026-01-05", "2024-02-29"]) for (const years of [1, 2, 3, 4]) {
      const birthday = `${Number(newest.slice(0, 4)) - years}${newest.slice(4).replace("-02-29", "-02-28")}`;
      expect(blockOf(daysFrom(dayAfter(birthday, -1), newest))).toBe(13 * years);
    }
  });
});

describe("blockDays", () => {
  test("gives every block its days, so that they add up to the records", () => {
    expect(blockDays(60)).toEqual([28, 28, 4]);
    expect(blockDays(731).slice(10)).toEqual([28, 28, 30, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 29]);
    expect(between(blockDays(1234), 0, 99)).toBe(1234);
  });
});

describe("seasonProfile", () => {
  const days = blockDays(1096), thirteen = (rest: number, busy: number) => Array.from({ length: 39 }, (_, block) => (block % 13 === 12 ? busy : rest));

  test("is flat while no full year is known, with the new-year holiday at either end forgiven", () => {
    expect([357, 358, 365, 723].map((length) => fullYears(blockDays(length), 0))).toEqual([0, 1, 1, 2]);
    expect(seasonProfile([9, 1, 9], blockDays(80), 0)).toEqual({ index: new Array(13).fill(1), years: 0 });
  });

  test("sees a block that was twice as busy in every year, drawn a little toward its neighbours and toward one", () => {
    // 1,200 ordinary and 200 busy reels a year: by hand the raw indices are 2,800 × (28 or 30 days) …; the busy one is near 1.9.
    const { index, years } = seasonProfile(thirteen(100, 214), days, 0);
    expect(years).toBe(3);
    expect(index[12]).toBeGreaterThan(1.6);
    expect(index[12]).toBeLessThan(1.95);
    expect(Math.max(...index.slice(1, 11))).toBeLessThan(1);
  });

  test("calls no season where counts swing no more than chance makes them", () => {
    const even = Array.from({ length: 39 }, (_, block) => 10 + ((block * 7) % 5) - 2);
    expect(seasonProfile(even, days, 0).index.every((one) => Math.abs(one - 1) < 0.02)).toBe(true);
  });

  test("looks at nothing newer than its origin", () => {
    const counts = thirteen(100, 214), known = seasonProfile(counts, days, 5);
    expect(seasonProfile(counts.map((count, block) => (block < 5 ? 9999 : count)), days, 5)).toEqual(known);
  });
});

describe("indexAhead", () => {
  const profile = { index: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0.5, 2], years: 2 };

  test("the four weeks ahead are those that ended a year ago today", () => expect(indexAhead(profile, 0, 28)).toBe(2));
  test("weighs the blocks by the days of each that are asked for", () =>
    // 28 days of 2 and 14 of 0.5, of 42.
    expect(indexAhead(profile, 0, 42)).toBeCloseTo((28 * 2 + 14 * 0.5) / 42, 12));
  test("begins later where the newest ticket is old", () => expect(indexAhead(profile, 28, 28)).toBe(0.5));
  test("looks at four weeks at least, so that one busy Monday is no season", () => expect(indexAhead(profile, 0, 3)).toBe(2));
});
