import type { Engine } from "../../db/engine.ts";
import { widenedShareInterval } from "../../stats/design-effect.ts";
import { meanCumulative } from "../../stats/mean-cumulative.ts";
import { COMEBACK_DAYS } from "../failures/failure-values.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { grouped } from "../grouped.ts";
import type { ComebackRow, Comebacks, CumulativePoint } from "./comeback.ts";
import countsSql from "./comeback-counts.sql?raw";
import { failureTrend, NO_TREND } from "./failure-trend.ts";
import linkedSql from "./linked.sql?raw";
import watchedSql from "./watched.sql?raw";

export interface ComebackFilter extends RecordsFilter {
  readonly group: string | null;
  readonly position: string | null;
  /**
   * Until when a reel counts as watched: to the last day of the records (one that went elsewhere is then taken for sound),
   * or to its own last visit.
   */
  readonly watched_until: "records end" | "last visit";
  /** Curves need every reel and take their time over long records; null ones are empty. */
  readonly curves: boolean;
}

type CountsRow = Omit<ComebackRow, "reels" | "share" | "curve" | "trend">;
type WatchedRow = {
  readonly position: string; readonly maker: string | null; readonly model: string;
  readonly age_at_end: number; readonly ages: readonly number[]; readonly reels: number;
};

/** Shares are shown from so many on. */
const FEWEST_FOR_SHARE = 10;
const keyOf = ({ position, maker, model }: { position: string; maker: string | null; model: string }) => JSON.stringify([position, maker, model]);

/** A line for every reel; those alike were counted together. */
function lines(rows: readonly WatchedRow[]): { end: number; events: readonly number[] }[] {
  return rows.flatMap(({ age_at_end, ages, reels }) => Array.from({ length: reels }, () => ({ end: age_at_end, events: ages })));
}

function curveOf(rows: readonly WatchedRow[]): CumulativePoint[] {
  return meanCumulative(lines(rows)).map(({ time, at_risk, mean, low, high }) => ({ age: time, at_risk, mean_cumulative: mean, low, high }));
}

function row(counts: CountsRow, watched: readonly WatchedRow[]): ComebackRow {
  const { failures, back } = counts, [low, high] = failures === 0 ? [null, null] : widenedShareInterval(back, failures, 1);
  const reels = watched.reduce((sum, one) => sum + one.reels, 0);
  return {
    ...counts, reels, share: { value: failures < FEWEST_FOR_SHARE ? null : back / failures, low, high },
    curve: curveOf(watched), trend: watched.length === 0 ? NO_TREND : failureTrend(lines(watched)),
  };
}

function together(rows: readonly CountsRow[], first: CountsRow): CountsRow {
  const sum = (name: "failures" | "back" | "minutes" | "parts") => rows.reduce((total, one) => total + one[name], 0);
  return { ...first, maker: "*", model: "*", failures: sum("failures"), back: sum("back"), minutes: sum("minutes"), parts: sum("parts") };
}

/** Models that were watched and never failed are there too, with nothing to count. */
function withWatched(counts: readonly CountsRow[], watched: readonly WatchedRow[]): CountsRow[] {
  const known = new Set(counts.map(keyOf)), names = new Map(counts.map(({ position, position_name }) => [position, position_name]));
  const silent = [...new Map(watched.map((one) => [keyOf(one), one])).values()].filter((one) => !known.has(keyOf(one)) && names.has(one.position));
  return [...counts, ...silent.map(({ position, maker, model }) => (
    { position, position_name: names.get(position) ?? position, maker, model, failures: 0, back: 0, minutes: 0, parts: 0 }))];
}

/**
 * Reels that came back with the same part failed again: share within 90 days, mean number of failures by age with Nelson's
 * robust limits, trend with age, and what the comebacks cost. New damage (an accident, a dunking) is no comeback.
 *
 * @returns each part over all models (`*`) followed by its models; parts whose comebacks cost most first
 */
export async function comebacks(engine: Engine, filter: ComebackFilter, signal?: AbortSignal): Promise<Comebacks> {
  const values = { ...filterValues(filter), group_code: filter.group, position: filter.position };
  const [counts, watched, [linked]] = await Promise.all([
    engine.rows<CountsRow>(countsSql, { ...values, within_days: COMEBACK_DAYS }, signal),
    filter.curves ? engine.rows<WatchedRow>(watchedSql, { ...values, last_seen: filter.watched_until === "last visit" }, signal) : [],
    engine.rows<{ tickets: number; with_serial: number }>(linkedSql, {}, signal),
  ]);
  const by_model = grouped(watched, keyOf), by_position = grouped(watched, (one) => one.position);
  const parts = [...grouped(withWatched(counts, watched), (one) => one.position).values()].flatMap((rows) => {
    const [first] = rows;
    if (!first) return [];
    return [[row(together(rows, first), by_position.get(first.position) ?? []), ...rows.map((one) => row(one, by_model.get(keyOf(one)) ?? []))]];
  });
  const cost = ([whole]: readonly ComebackRow[]) => (whole ? whole.minutes + whole.parts : 0), backs = ([whole]: readonly ComebackRow[]) => whole?.back ?? 0;
  parts.sort((a, b) => cost(b) - cost(a) || backs(b) - backs(a));
  const linked_share = linked && linked.tickets > 0 ? linked.with_serial / linked.tickets : null;
  return { rows: parts.flat(), linked_share, within_days: COMEBACK_DAYS };
}
