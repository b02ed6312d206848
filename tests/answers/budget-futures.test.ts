import { describe, expect, test } from "vitest";
import { PastWeeks } from "../../src/answers/budget/past-weeks.ts";
import { dayNumber, pastJobs } from "../../src/answers/budget/past-jobs.ts";
import { rush } from "../../src/answers/budget/rush.ts";
import { scenarios } from "../../src/answers/budget/scenarios.ts";
import { dayAfter } from "../../src/answers/days.ts";
import { seededRandom } from "../../src/stats/random.ts";

const FIRST = dayNumber("2023-01-02");
const at = (from: number, days: number, parts: (i: number) => [number, number][]) =>
  Array.from({ length: days }, (_, i) => ({ day: from + i, parts: parts(i) })).filter((job) => job.parts.length > 0);
const group = (lead_days: number, supplier = "A") => ({ supplier, lead_days, lead_sd: 0, review_days: 7 });

describe("pastJobs", () => {
  test("puts the parts of one ticket together, drops those not planned, and jobs that have none left", () => {
    const line = (ticket_no: string, interchange: string, pieces = 1) => ({ ticket_no, day: "2024-03-01", interchange, pieces });
    expect(pastJobs([line("1", "a"), line("1", "b", 2), line("2", "x"), line("3", "b"), line("3", "x")], ["b", "a"])).toEqual([
      { day: 19_783, parts: [[1, 1], [0, 2]] }, { day: 19_783, parts: [[0, 1]] },
    ]);
  });
});

describe("scenarios", () => {
  test("keep the parts of a job together: a job that always needs both never needs one", () => {
    const weeks = new PastWeeks(at(FIRST, 60, () => [[0, 1], [1, 1]]), FIRST, FIRST + 59);
    const { need_from, group: of } = scenarios({ weeks, groups: [group(7), group(7)], from: FIRST + 60, lasting: null }, 50, seededRandom(1));
    for (let job = 0; job + 1 < need_from.length; job += 1) expect([...of.slice(need_from[job], need_from[job + 1])]).toEqual([0, 1]);
  });

  test("count what all jobs before took: a piece a day, for as many days as the next order takes", () => {
    const weeks = new PastWeeks(at(FIRST, 70, () => [[0, 2]]), FIRST, FIRST + 69);
    const { level, job_from } = scenarios({ weeks, groups: [group(7)], from: FIRST + 70, lasting: null }, 1, seededRandom(1));
    expect([...level]).toEqual(Array.from({ length: 14 }, (_, i) => 2 * (i + 1)));
    expect([...job_from]).toEqual([0, 14]);
  });

  test("leave a part out of a job once its next delivery is there, and the job stays for its other parts", () => {
    const weeks = new PastWeeks(at(FIRST, 70, () => [[0, 1], [1, 1]]), FIRST, FIRST + 69);
    const { group: of } = scenarios({ weeks, groups: [group(7, "A"), group(14, "B")], from: FIRST + 70, lasting: null }, 1, seededRandom(1));
    expect([...of].filter((one) => one === 0).length).toBe(14);
    expect([...of].filter((one) => one === 1).length).toBe(21);
  });

  test("take the same season: what is needed in spring only is not needed in autumn", () => {
    // Two years; group 0 on every day of March and April, group 1 on every day of September and October.
    const days = Array.from({ length: 730 }, (_, i) => dayAfter("2023-01-02", i)), month = (day: string) => Number(day.slice(5, 7));
    const jobs = days.flatMap((day): { day: number; parts: [number, number][] }[] => {
      const of = [3, 4].includes(month(day)) ? 0 : [9, 10].includes(month(day)) ? 1 : null;
      return of === null ? [] : [{ day: dayNumber(day), parts: [[of, 1]] }];
    });
    const weeks = new PastWeeks(jobs, FIRST, FIRST + 729);
    const needed = (from: string) => new Set(scenarios({ weeks, groups: [group(7), group(7)], from: dayNumber(from), lasting: 14 }, 40, seededRandom(2)).group);
    expect([...needed("2025-03-25")]).toEqual([0]);
    expect([...needed("2025-09-25")]).toEqual([1]);
  });

  test("bring an earlier year to the level of the last one", () => {
    // One job a day in the first year, two in the second: futures hold two a day whatever year they come from.
    const jobs = Array.from({ length: 728 }, (_, i) => i).flatMap((i) => Array.from({ length: i < 364 ? 1 : 2 }, () => ({ day: FIRST + i, parts: [[0, 1]] as [number, number][] })));
    const weeks = new PastWeeks(jobs, FIRST, FIRST + 727), futures = 300;
    const { need_from } = scenarios({ weeks, groups: [group(7)], from: FIRST + 728 + 182, lasting: 14 }, futures, seededRandom(4));
    expect((need_from.length - 1) / futures).toBeCloseTo(28, 6);
  });

  test("refuse a past of less than a week", () => expect(() => new PastWeeks([], FIRST, FIRST + 5)).toThrow(RangeError));
});

describe("rush", () => {
  const intake = (days: number, tickets: (day: string) => number) => Array.from({ length: days }, (_, i) => dayAfter("2022-01-01", i)).map((day) => ({ day, tickets: tickets(day) }));
  const spring = (day: string) => (day.slice(5) >= "03-05" && day.slice(5) < "06-04" ? 3 : 1);

  test("finds the thirteen weeks of the year that bring most reels, next ahead", () => {
    // Week 9 of the year (days 63 to 69) begins on 5 March, in the leap year 2024 on the 4th; its 91st day is 2 June. Two years of 91 days with 3 each.
    const found = rush(intake(730, spring), "2023-12-31");
    expect(found).toMatchObject({ from: "2024-03-04", until: "2024-06-02", tickets: 546, years: 2 });
    // 91 days of 3 and 274 of 1 a year are 547; a quarter (13 of 52 weeks) of it is 136.75, and 273 / 136.75 = 2.
    expect(found?.times_usual).toBeCloseTo(273 / 136.75, 2);
  });

  test("stays with the one that is on while it lasts", () => expect(rush(intake(850, spring), "2024-04-29")?.from).toBe("2024-03-04"));
  test("is none where all weeks are alike, and under a year of records", () =>
    expect([rush(intake(730, () => 1), "2023-12-31"), rush(intake(300, spring), "2022-10-27"), rush([], "2024-01-01")]).toEqual([null, null, null]));
});
