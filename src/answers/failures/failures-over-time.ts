import type { Engine } from "../../db/engine.ts";
import { grouped } from "../grouped.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import byMonthSql from "./by-month.sql?raw";
import type { FailureFilter, FailurePeriod } from "./failure-rate.ts";
import { failureValues, FEWEST_FOR_SHARE } from "./failure-values.ts";

type MonthRow = { month: string; inspected: number; failed: number; replaced: number; replaced_routine: number };

/** First day of the span of `months` that a month falls in: spans start with January. */
function start(month: string, months: number): string {
  const first = Math.floor((Number(month.slice(5, 7)) - 1) / months) * months + 1;
  return `${month.slice(0, 5)}${String(first).padStart(2, "0")}-01`;
}

function period(rows: readonly MonthRow[], at: string, opening: FailurePeriod["opening"]): FailurePeriod {
  const sum = (name: Exclude<keyof MonthRow, "month">) => rows.reduce((total, row) => total + row[name], 0);
  const inspected = sum("inspected"), failed = sum("failed"), replaced = sum("replaced"), replaced_routine = sum("replaced_routine");
  const [rate_low, rate_high] = inspected === 0 ? [null, null] : shareInterval(failed, inspected), shown = inspected >= FEWEST_FOR_SHARE;
  return {
    period: at, opening, inspected, failed, rate: shown ? failed / inspected : null, rate_low, rate_high,
    replaced, replaced_routine, replaced_share: shown ? (replaced + replaced_routine) / inspected : null,
  };
}

/**
 * Failures and replacements of one position by month, quarter or half year, oldest first; periods of the records without
 * any inspection are there with zeros. A new habit of replacing shows in `replaced_share` and leaves `rate` alone.
 */
export async function failuresOverTime(
  engine: Engine,
  { months, ...filter }: FailureFilter & { readonly position: string; readonly months: 1 | 3 | 6 },
  signal?: AbortSignal,
): Promise<readonly FailurePeriod[]> {
  const rows = await engine.rows<MonthRow>(byMonthSql, failureValues(filter), signal);
  const spans = grouped(rows, (row) => start(row.month, months));
  return [...spans].map(([at, within]) => period(within, at, filter.opening));
}
