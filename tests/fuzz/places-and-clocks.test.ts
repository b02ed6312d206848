import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { dayAfter, daysFrom, isDay } from "../../src/answers/days.ts";
import { benchMinutes, gapOf, started, stopped, NO_TIME } from "../../src/records/bench-log/bench-timer.ts";
import { openMemoryLedger } from "../../src/records/ledger/memory-ledger.ts";
import { today } from "../../src/records/today.ts";
import { date, minutes, momentDay, number, percent } from "../../src/ui/format.ts";
import { newBatch } from "../records/ledger/contract.ts";

const HERE = process.env["TZ"];
/** Half an hour of summer time; a day that never was; whole days from Greenwich both ways; no summer time; by quarters of an hour. */
const ZONES = ["UTC", "Australia/Lord_Howe", "Pacific/Apia", "Pacific/Kiritimati", "Pacific/Pago_Pago", "America/St_Johns", "Europe/London", "Asia/Kathmandu", "America/Sao_Paulo"];
const at = (moment: string) => Date.parse(moment);
afterAll(() => { if (HERE === undefined) delete process.env["TZ"]; else process.env["TZ"] = HERE; });

describe.each(ZONES)("in %s", (zone) => {
  beforeEach(() => { process.env["TZ"] = zone; });

  test("days of the records are days of the calendar, whatever the clocks did on them", () => {
    for (const day of ["2011-12-30", "2026-03-29", "2026-04-05", "2026-10-04", "2026-10-25", "2018-11-04", "2024-02-29"]) {
      expect([isDay(day), dayAfter(dayAfter(day, -1), 1), daysFrom(dayAfter(day, -1), dayAfter(day, 1)), date(day, "en-GB")]).toEqual([true, day, 2, `${Number(day.slice(8))} ${["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sept", "Oct", "Nov", "Dec"][Number(day.slice(5, 7)) - 1] ?? ""} ${day.slice(0, 4)}`]);
    }
    const year = Array.from({ length: 366 }, (_, days) => dayAfter("2026-01-01", days));
    expect([new Set(year).size, year.at(-1)]).toEqual([366, "2027-01-01"]);
  });

  test("today and the day of an import are those on the wall there", () => {
    for (const moment of ["2026-01-01T00:30:00Z", "2026-06-30T10:15:00Z", "2026-12-31T23:59:59Z", "2011-12-30T09:59:00Z", "2011-12-30T10:01:00Z", "2026-04-04T15:15:00Z"]) {
      const wall = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, year: "numeric", month: "2-digit", day: "2-digit" }).format(at(moment));
      expect([moment, today(new Date(moment)), momentDay(moment, "en-GB")]).toEqual([moment, wall, date(wall, "en-GB")]);
    }
  });

  test("an hour at the bench is an hour while the clocks change", () => {
    for (const change of ["2026-04-04T14:30:00Z", "2026-10-03T15:20:00Z", "2026-03-29T00:30:00Z", "2011-12-30T09:30:00Z"]) {
      const timer = stopped(started(NO_TIME, at(change)), at(change) + 3_600_000);
      expect(benchMinutes(timer, at(change) + 9_999_999)).toBe(60);
    }
  });
});

describe("a clock that is set back a year between two acts", () => {
  afterEach(() => { vi.useRealTimers(); });

  test("takes no minute from the timer and is told as a gap", () => {
    const now = at("2026-11-30T10:00:00Z"), back = at("2025-11-30T10:00:00Z"), timer = started(NO_TIME, now);
    expect([benchMinutes(timer, back), gapOf(timer, now, back), stopped(timer, back)]).toEqual([0, { from: now, to: back }, { spans: [], since: null }]);
  });

  test("changes neither the order of imports nor which of them is the newer", async () => {
    const ledger = openMemoryLedger();
    for (const imported_at of ["2026-11-30T10:00:00Z", "2025-11-30T10:00:00Z"]) await ledger.append({ ...newBatch(1), imported_at });
    const batches = await ledger.batches();
    expect(batches.map(({ import_no, imported_at }) => [import_no, imported_at.slice(0, 4)])).toEqual([[1, "2026"], [2, "2025"]]);
    expect(new Set(batches.map(({ id }) => id)).size).toBe(2);
  });
});

describe("in the reader's language", () => {
  test.each([
    ["tr-TR", "1.234.567,5"], ["de-DE", "1.234.567,5"], ["hi-IN", "12,34,567.5"], ["ar-EG", "١٬٢٣٤٬٥٦٧٫٥"], ["fr-CH", "1 234 567,5"],
  ])("%s numbers are grouped and pointed as there, nought has no minus, and what is missing stays a dash", (locale, written) => {
    expect(number(1_234_567.5, 1, locale).replace(/[\u00a0\u202f]/g, " ")).toBe(written);
    expect([number(-0.2, 0, locale), number(-0.04, 1, locale)]).toEqual([number(0, 0, locale), number(0, 1, locale)]);
    expect([number(NaN, 0, locale), date("2026-02-30x", locale) === "–", minutes(null, locale), percent(undefined, locale), momentDay("soon", locale)]).toEqual(["–", false, "–", "–", "–"]);
  });
});
