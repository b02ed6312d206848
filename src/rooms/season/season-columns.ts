import type { LoadWeek } from "../../answers/bench-load/bench-load.ts";
import type { JobPromise } from "../../answers/bench-load/promise.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import type { MonthOfYear } from "../../answers/season/season.ts";
import type { ForecastScore } from "../../stats/rolling-origin.ts";
import { date, number, range, share } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import { METHODS, monthName, promiseDay } from "./season-words.ts";

const right = { align: "right" } as const;

/** Promise dates by job. */
export const PROMISE_COLUMNS: readonly Column<JobPromise>[] = [
  { key: "job", label: "Job", value: jobName },
  { key: "promise", label: "Promise", value: (row) => row.promise, text: (row) => promiseDay(row.promise) },
  { key: "days", label: "Days from today", ...right, value: (row) => row.days, text: (row) => number(row.days) },
  { key: "middle", label: "Half are ready by", value: (row) => row.middle, text: (row) => promiseDay(row.middle) },
  { key: "waits", label: "Wait for a part", unit: "of 100", ...right, value: (row) => row.waits, text: (row) => number(row.waits * 100) },
  { key: "n", label: "Jobs behind it", ...right, value: (row) => row.n, text: (row) => number(row.n) },
];

const week: Column<LoadWeek> = { key: "monday", label: "Week of", value: (row) => row.monday, text: (row) => date(row.monday) };
const spread = (key: string, label: string, unit: string, of: (row: LoadWeek) => { mean: number; low: number; high: number }): readonly Column<LoadWeek>[] => [
  { key, label, unit, ...right, value: (row) => of(row).mean, text: (row) => number(of(row).mean) },
  { key: `${key}_range`, label: "Likely", value: (row) => of(row).low, text: (row) => range(of(row).low, of(row).high) },
];
/** Reels and hours of the weeks ahead. */
export const REEL_COLUMNS: readonly Column<LoadWeek>[] = [week, ...spread("tickets", "Reels", "", ({ forecast }) => ({ mean: forecast.tickets, low: forecast.low, high: forecast.high }))];
export const HOUR_COLUMNS: readonly Column<LoadWeek>[] = [
  week, ...spread("hours", "Work", "hours", (row) => row.hours), { key: "capacity", label: "There are", unit: "hours", ...right, value: (row) => row.capacity_hours, text: (row) => number(row.capacity_hours) },
  ...spread("line", "Line at its end", "hours", (row) => row.line_hours), { key: "in_shop", label: "Reels in the shop", ...right, value: (row) => row.in_shop.mean, text: (row) => number(row.in_shop.mean) },
];
export const WAIT_COLUMNS: readonly Column<LoadWeek>[] = [
  week, { key: "middle", label: "Half ready within", unit: "days", ...right, value: (row) => row.wait?.middle ?? null, text: (row) => number(row.wait?.middle) },
  { key: "most", label: "8 of 10 within", unit: "days", ...right, value: (row) => row.wait?.most ?? null, text: (row) => number(row.wait?.most) },
];

/** How the ways to look ahead did. */
export const scoreColumns = (chosen: string | null): readonly Column<ForecastScore>[] => [
  { key: "method", label: "Way to look ahead", value: (row) => METHODS[row.method] },
  { key: "horizon", label: "Weeks ahead", ...right, value: (row) => row.horizon, text: (row) => number(row.horizon) },
  { key: "pinball", label: "Loss", unit: "less is better", ...right, value: (row) => row.pinball, text: (row) => number(row.pinball, 2) },
  { key: "mase", label: "Miss", unit: "1 = as last year’s week", ...right, value: (row) => row.mase, text: (row) => number(row.mase, 2) },
  { key: "covered", label: "Inside the range", unit: "8 in 10 is right", value: (row) => row.covered / row.n, text: (row) => share(row.covered, row.n) },
  { key: "chosen", label: "Used", value: (row) => (row.method === chosen ? "yes" : null), text: (row) => (row.method === chosen ? "yes" : " ") },
];

/** Months of the year. */
export const MONTH_COLUMNS: readonly Column<MonthOfYear>[] = [
  { key: "month", label: "Month", value: (row) => row.month, text: (row) => monthName(row.month) },
  { key: "tickets", label: "Reels", ...right, value: (row) => row.tickets, text: (row) => number(row.tickets) },
  { key: "index", label: "Times an average month", ...right, value: (row) => row.index, text: (row) => number(row.index, 2) },
];
