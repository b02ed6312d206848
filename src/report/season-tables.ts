import type { BenchLoad, LoadWeek } from "../answers/bench-load/bench-load.ts";
import { benchRecords } from "../answers/bench-load/bench-records.ts";
import { NO_HOURS } from "../answers/bench-load/bench-hours.ts";
import { NO_RATES } from "../answers/labour/bench-rates.ts";
import { benchLoadOf } from "../answers/bench-load/weeks-ahead.ts";
import type { Season, WeekAhead } from "../answers/season/season.ts";
import type { Engine } from "../db/engine.ts";
import type { ReportTable } from "./table.ts";

const WORKLOAD = [
  "week", "tickets", "tickets_p10", "tickets_p90", "bench_hours", "bench_hours_p10", "bench_hours_p90", "method",
  "open_share", "capacity_hours", "line_hours", "line_hours_p10", "line_hours_p90", "in_shop", "wait_days_p50", "wait_days_p80", "note",
];
const SCORE = ["method", "horizon_weeks", "mase", "pinball", "coverage80", "n", "chosen", "note"];

function workloadRow(week: WeekAhead, played: LoadWeek | null, { season, status, status_text }: BenchLoad) {
  const known = played !== null && status === "ok" ? played : null;
  return {
    week: week.monday, tickets: week.tickets, tickets_p10: week.low, tickets_p90: week.high,
    bench_hours: played?.hours.mean ?? null, bench_hours_p10: played?.hours.low ?? null, bench_hours_p90: played?.hours.high ?? null, method: season.method,
    open_share: week.open, capacity_hours: known?.capacity_hours ?? null, line_hours: known?.line_hours.mean ?? null, line_hours_p10: known?.line_hours.low ?? null,
    line_hours_p90: known?.line_hours.high ?? null, in_shop: known?.in_shop.mean ?? null, wait_days_p50: known?.wait?.middle ?? null, wait_days_p80: known?.wait?.most ?? null,
    note: [season.status === "ok" ? "" : season.status_text, status_text].filter((text) => text !== "").join(" "),
  };
}

/** Whole weeks to come; one row without figures that says why when there is no forecast. */
export function workloadTable(load: BenchLoad): ReportTable {
  const { season, weeks } = load, none = Object.fromEntries(WORKLOAD.map((column) => [column, null]));
  const rows = season.ahead.map((week) => workloadRow(week, weeks.find(({ monday }) => monday === week.monday) ?? null, load));
  return { file: "workload.csv", columns: WORKLOAD, rows: rows.length > 0 ? rows : [{ ...none, note: season.status_text }] };
}

/** How the ways to look ahead did on the shop's own past; one row that says why when it is too short to try. */
export function forecastScoreTable({ scores, method, status_text }: Season): ReportTable {
  const rows = scores.map((score) => ({
    method: score.method, horizon_weeks: score.horizon, mase: score.mase, pinball: score.pinball, coverage80: score.covered / score.n, n: score.n,
    chosen: score.method === method ? "yes" : "no", note: score.n < 10 ? "few looks back" : "",
  }));
  const none = { method, horizon_weeks: null, mase: null, pinball: null, coverage80: null, n: 0, chosen: method === null ? null : "yes", note: status_text };
  return { file: "forecast-score.csv", columns: SCORE, rows: rows.length > 0 ? rows : [none] };
}

/** The weeks ahead and how good such forecasts were; no hours are written down in a folder of records, so those of busy weeks stand for them. */
export async function seasonTables(engine: Engine, as_of: string): Promise<readonly ReportTable[]> {
  const load = await benchLoadOf(await benchRecords(engine, as_of, { hours: NO_HOURS, closures: [], rates: NO_RATES }));
  return [workloadTable(load), forecastScoreTable(load.season)];
}
