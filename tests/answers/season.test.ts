import { describe, expect, test } from "vitest";
import { benchHoursText, hoursAWeek, readBenchHours } from "../../src/answers/bench-load/bench-hours.ts";
import { closuresText, readClosures } from "../../src/answers/season/bench-calendar.ts";
import { mondayOf, openDays, opensOn, weekdayOf } from "../../src/answers/season/open-days.ts";
import type { DayCount, DayLine } from "../../src/answers/season/open-days.ts";
import { seasonOf } from "../../src/answers/season/season-forecast.ts";
import { wholeWeeks } from "../../src/answers/season/weeks.ts";
import { dayAfter } from "../../src/answers/days.ts";

/** Four reels on every day from Monday to Saturday, but for the days left out. */
function daily(from: string, days: number, out: (day: string) => boolean = () => false): DayCount[] {
  return Array.from({ length: days }, (_, at) => dayAfter(from, at)).filter((day) => weekdayOf(day) < 6 && !out(day)).map((day) => ({ day, tickets: 4 }));
}
/** @throws {RangeError} when there is no day */
function lineOf(days: readonly DayCount[], to: string): DayLine {
  const line = openDays(days, to, []);
  if (line === null) throw new RangeError("lineOf: needs a day, got none");
  return line;
}
const between = (from: string, to: string) => (day: string) => from <= day && day <= to;
const season = (days: readonly DayCount[], as_of: string, closures: readonly { from: string; to: string; who: null; text: string }[] = []) => seasonOf({ days, as_of, closures, weeks: 26 });

describe("days the shop was open", () => {
  test("2026-01-05 is a Monday, and its week begins with itself", () => {
    expect([weekdayOf("2026-01-05"), mondayOf("2026-01-11"), mondayOf("2026-01-05")]).toEqual([0, "2026-01-05", "2026-01-05"]);
  });
  test("a week without a reel in a shop that gets some every day was closed, and is no week of nought", () => {
    const line = lineOf(daily("2024-01-01", 180, between("2024-03-11", "2024-03-16")), "2024-06-28");
    expect(line.quiet).toEqual([{ from: "2024-03-11", to: "2024-03-16", kind: "closed" }]);
    expect(wholeWeeks(line).find(({ monday }) => monday === "2024-03-11")).toEqual({ monday: "2024-03-11", tickets: 0, open: 0 });
  });
  test("a week closed from Thursday on was half open", () => {
    const line = lineOf(daily("2024-01-01", 180, between("2024-03-14", "2024-03-19")), "2024-06-28");
    expect(wholeWeeks(line).find(({ monday }) => monday === "2024-03-11")).toEqual({ monday: "2024-03-11", tickets: 12, open: expect.closeTo(0.5, 1) });
  });
  test("two days without a reel are chance", () => {
    expect(openDays(daily("2024-01-01", 180, between("2024-03-11", "2024-03-12")), "2024-06-28", [])?.quiet).toEqual([]);
  });
  test("months without a ticket are a gap, unless they come again every year: then they are the season", () => {
    const once = between("2023-06-01", "2023-08-31"), always = (day: string) => ["01", "02"].includes(day.slice(5, 7));
    expect(openDays(daily("2022-03-01", 1000, once), "2024-11-20", [])?.quiet).toEqual([{ from: "2023-06-01", to: "2023-08-31", kind: "gap" }]);
    expect(openDays(daily("2022-03-01", 1000, always), "2024-11-20", [])?.quiet).toEqual([]);
  });
  test("the owner's closed days are closed without asking chance, and a day with a ticket was open all the same", () => {
    const closures = [{ from: "2024-03-11", to: "2024-03-12", who: null, text: "fair" }];
    const line = openDays(daily("2024-01-01", 100, between("2024-03-11", "2024-03-11")), "2024-04-08", closures);
    expect([70, 71].map((at) => [dayAfter("2024-01-01", at), line?.open[at]])).toEqual([["2024-03-11", false], ["2024-03-12", true]]);
  });
  test("a time closed in both years so far is closed in the next; one closed once is not", () => {
    const line = lineOf(daily("2023-01-02", 900, (day) => between("2023-08-07", "2023-08-12")(day) || between("2024-08-05", "2024-08-10")(day) || between("2024-11-04", "2024-11-09")(day)), "2025-06-20");
    expect([opensOn("2025-08-05", line, []), opensOn("2025-11-05", line, []), opensOn("2025-07-01", line, [{ from: "2025-07-01", to: "2025-07-01", who: null, text: "" }])]).toEqual([false, true, false]);
  });
});

describe("the forecast's status", () => {
  test("no ticket, one week, half a year, a year and a half, three years: each says what it can", () => {
    const at = (days: number) => season(daily("2023-01-02", days), dayAfter("2023-01-02", days - 1));
    expect([season([], "2024-01-01"), at(7), at(180), at(550), at(1100)].map(({ status, ahead }) => [status, ahead.length])).toEqual([["no records", 0], ["too few weeks", 0], ["under a year", 26], ["one to two years", 26], ["ok", 26]]);
    expect(at(7).status_text).toBe("The records hold 1 whole week. Four are the fewest to say anything about the weeks ahead.");
  });
  test("the running week is dropped, and its rest is told apart", () => {
    const { past, rest, ahead } = season(daily("2023-01-02", 1096), "2025-12-31");
    expect([past.at(-1)?.monday, rest?.monday, ahead[0]?.monday, ahead.at(-1)?.monday]).toEqual(["2025-12-22", "2025-12-29", "2026-01-05", "2026-06-29"]);
    // Thursday to Saturday are half of the six days.
    expect(rest?.open).toBeCloseTo(0.5, 2);
  });
  test("tickets dated after the day are left out and counted", () => {
    const { after_as_of, notes } = season([...daily("2023-01-02", 1000), { day: "2026-08-03", tickets: 2 }], "2025-09-27");
    expect([after_as_of, notes.includes("2 tickets dated after this day are left out.")]).toEqual([2, true]);
  });
  test("a closure of the owner takes the reels out of its week ahead, not out of the others", () => {
    const days = daily("2023-01-02", 1092), bare = season(days, "2025-12-28"), closed = season(days, "2025-12-28", [{ from: "2026-02-02", to: "2026-02-08", who: null, text: "" }]);
    expect([closed.ahead[5]?.monday, closed.ahead[5]?.tickets, closed.ahead[5]?.high]).toEqual(["2026-02-02", 0, 0]);
    expect(closed.ahead[4]).toEqual(bare.ahead[4]);
  });
  test("four reels on each of six days are 24 a week, with a gap of a quarter in the middle too", () => {
    const { ahead, notes } = season(daily("2023-01-02", 1092, between("2024-04-01", "2024-06-30")), "2025-12-28");
    expect(ahead.slice(0, 13).every(({ tickets }) => Math.abs(tickets - 24) < 1.5)).toBe(true);
    expect(notes.some((note) => note.startsWith("No ticket is written from 1 April 2024 to 29 June 2024."))).toBe(true);
  });
});

describe("what the owner writes about the bench", () => {
  test("closed days come back as they were written, soonest first; what is none is refused or named", () => {
    const written = [{ from: "2026-08-10", to: "2026-08-21", who: null, text: "summer" }, { from: "2026-02-02", to: "2026-02-02", who: "T2", text: "" }];
    expect(readClosures(closuresText(written))).toEqual({ closures: [written[1], written[0]], faults: [] });
    expect(closuresText([])).toBeNull();
    expect(() => closuresText([{ from: "2026-02-03", to: "2026-02-02", who: null, text: "" }])).toThrow(RangeError);
    expect(() => closuresText([{ from: "2026-02-30", to: "2026-03-02", who: null, text: "" }])).toThrow(RangeError);
    expect(readClosures('[{"from":"2026-02-03"}]').faults[0]).toMatch(/^A closed time was left out: its last day/);
    expect(readClosures("{").faults[0]).toMatch(/^The list of closed days cannot be read/);
  });
  test("hours come back and add up; no hours, two of one name and what is no number are refused", () => {
    const hours = { people: [{ name: "T1", hours_a_week: 20 }, { name: "T2", hours_a_week: 12.5 }] };
    expect([readBenchHours(benchHoursText(hours)), hoursAWeek(hours), hoursAWeek({ people: [] })]).toEqual([{ hours, faults: [] }, 32.5, null]);
    for (const people of [[{ name: "T1", hours_a_week: 0 }], [{ name: "T1", hours_a_week: NaN }], [{ name: "", hours_a_week: 5 }], [{ name: "T1", hours_a_week: 5 }, { name: "T1", hours_a_week: 6 }]]) expect(() => benchHoursText({ people })).toThrow(RangeError);
    expect(readBenchHours("[").faults.length).toBe(1);
  });
});
