import { countBand } from "../../stats/count-band.ts";
import { intakeForecast } from "../../stats/intake-forecast.ts";
import type { IntakeForecast, IntakeStatus } from "../../stats/intake-forecast.ts";
import type { CountDistribution } from "../../stats/negative-binomial.ts";
import { dayAfter, YEAR_DAYS } from "../days.ts";
import { daysAhead, countOf, wholeWeeks } from "./weeks.ts";
import type { DayAhead, Week } from "./weeks.ts";
import { openDays, mondayOf } from "./open-days.ts";
import type { DayLine } from "./open-days.ts";
import { seasonNotes, statusText } from "./season-words.ts";
import type { LevelChange, MonthOfYear, Season, SeasonRecords, SeasonStatus, WeekAhead } from "./season.ts";

const YEAR_WEEKS = YEAR_DAYS / 7, LEVEL_WEEKS = 13;
const STATUS: Readonly<Record<IntakeStatus, SeasonStatus>> = { ok: "ok", "one to two years": "one to two years", "under a year": "under a year", "too few steps": "too few weeks" };

/** Reels of each month of the year, over as many whole years as the records end with. */
function monthsOf({ first, tickets }: DayLine): MonthOfYear[] {
  const years = Math.floor(tickets.length / YEAR_DAYS + 0.02), days = Math.min(tickets.length, Math.round(years * YEAR_DAYS)), from = tickets.length - days;
  if (years < 1) return [];
  const sums = new Array<number>(12).fill(0);
  for (let at = from; at < tickets.length; at += 1) {
    const month = Number(dayAfter(first, at).slice(5, 7)) - 1;
    sums[month] = (sums[month] ?? 0) + (tickets[at] ?? 0);
  }
  const mean = sums.reduce((sum, one) => sum + one, 0) / 12;
  return sums.map((sum, at) => ({ month: at + 1, tickets: sum, index: mean > 0 ? sum / mean : 0 }));
}

/** Whether the last quarter differs from the same quarter a year before by more than weeks differ anyway. */
function levelChange(past: readonly Week[], scatter: number): LevelChange | null {
  const year = Math.round(YEAR_WEEKS), now = past.slice(-LEVEL_WEEKS), before = past.slice(-LEVEL_WEEKS - year, -year);
  const sum = (some: readonly Week[], key: "tickets" | "open") => some.reduce((all, week) => all + week[key], 0);
  if (before.length < LEVEL_WEEKS || sum(before, "open") < 6 || sum(now, "open") < 6 || sum(before, "tickets") === 0) return null;
  const allowed = sum(now, "open") / sum(before, "open"), expected = sum(before, "tickets") * allowed, count = sum(now, "tickets");
  const sd = Math.sqrt(scatter * (expected * allowed + expected));
  return { now: count, before: sum(before, "tickets"), ratio: count / expected, beyond_chance: Math.abs(count - expected) > 2.6 * sd };
}

/** A week's reels where only a share of it is open: the scatter of single weeks stays as many times Poisson's. */
export function openPart({ mean, size }: CountDistribution, open: number): CountDistribution {
  return open <= 0 || size === Infinity ? { mean: mean * open, size: Infinity } : { mean: mean * open, size: size * open };
}

function weekAhead(days: readonly DayAhead[], whole: CountDistribution): WeekAhead {
  const open = days.reduce((sum, day) => sum + (day.open ? day.share : 0), 0), count = openPart(whole, open);
  const band = count.mean > 0 ? countBand(count, 0.8) : { low: 0, high: 0 };
  return { monday: mondayOf(days[0]?.day ?? ""), tickets: count.mean, low: band.low, high: band.high, whole, open };
}

function weeksAhead(records: SeasonRecords, line: DayLine, { ahead }: IntakeForecast): { rest: WeekAhead | null; ahead: WeekAhead[] } {
  const days = daysAhead(records.as_of, records.weeks, line, records.closures), weeks: DayAhead[][] = [];
  for (const day of days) (weeks[day.week] ??= []).push(day);
  const told = weeks.flatMap((some, at) => { const whole = ahead[at]; return whole ? [weekAhead(some, whole)] : []; });
  const rest = (weeks[0]?.length ?? 7) < 7 || days[0] === undefined ? 1 : weeks.length > records.weeks ? 1 : 0;
  return { rest: rest ? told[0] ?? null : null, ahead: told.slice(rest) };
}

const NOTHING = { method: null, line: null, past: [], ahead: [], rest: null, level_sd: 0, scores: [], months: [], quiet: [], level_change: null, notes: [] } as const;

/**
 * How many reels come in each week of the time ahead, by the way that would have done best in this shop's own past.
 *
 * Plain figures in and out, so it may run in a worker.
 */
export function seasonOf(records: SeasonRecords): Season {
  const { as_of, closures, weeks } = records, known = records.days.filter(({ day }) => day <= as_of), after_as_of = records.days.reduce((sum, { day, tickets }) => sum + (day > as_of ? tickets : 0), 0);
  const line = openDays(known, as_of, closures);
  if (line === null) return { as_of, status: "no records", status_text: statusText("no records", 0), after_as_of, ...NOTHING };
  const past = wholeWeeks(line), counts = past.map(countOf), told = counts.filter((count) => count !== null).length;
  const forecast = intakeForecast({ counts, open: past.map(({ open }) => open), year: YEAR_WEEKS }, weeks + 1), status = STATUS[forecast.status];
  const first = forecast.ahead[0], scatter = first && first.mean > 0 ? 1 + first.mean / first.size : 1;
  const level_change = levelChange(past, scatter), quiet = line.quiet;
  return {
    as_of, status, status_text: statusText(status, told), method: forecast.method, line, past, ...weeksAhead(records, line, forecast),
    level_sd: forecast.level_sd, scores: forecast.scores, months: monthsOf(line), quiet, level_change, after_as_of,
    notes: seasonNotes({ quiet, after_as_of, level_change, past, as_of }),
  };
}
