import type { BenchLoad, LoadWeek } from "../../answers/bench-load/bench-load.ts";
import { fullest } from "../../answers/bench-load/load-words.ts";
import type { JobPromise } from "../../answers/bench-load/promise.ts";
import { dayAfter } from "../../answers/days.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import type { Season, SeasonStatus } from "../../answers/season/season.ts";
import type { CandidateName } from "../../stats/intake-candidates.ts";
import { count, date, longDay, number, readerLocale, share } from "../../ui/format.ts";
import { rowsBehindLink } from "../../ui/rows-behind-link.ts";

/** A day as it is said at the counter. */
export const promiseDay = longDay;

const MONTHS = Array.from({ length: 12 }, (_, at) => new Date(Date.UTC(2001, at, 15)));
/** A month of the year by its number from 1. */
export const monthName = (month: number, locale = readerLocale()): string => new Intl.DateTimeFormat(locale, { month: "long", timeZone: "UTC" }).format(MONTHS[month - 1]);

/** The ways to look ahead in the owner's words. */
export const METHODS: Readonly<Record<CandidateName, string>> = {
  flat: "the same every week",
  "same week last year": "as the same week last year",
  "yearly curve": "a yearly curve with one hump",
  "yearly curve with two humps": "a yearly curve with two humps",
  "yearly curve in detail": "a yearly curve in detail",
  "recent weeks": "as the recent weeks",
  "recent weeks with season": "recent weeks, times the season",
  "curve and recent weeks": "mean of a yearly curve and the recent weeks",
  "last year and curve": "midway between the same week last year and a yearly curve",
};

/** The job asked for, else the commonest. */
export function shownPromise(promises: readonly JobPromise[], job: string): JobPromise | null {
  return promises.find((one) => jobName(one) === job) ?? promises.reduce<JobPromise | null>((most, one) => (most === null || one.n > most.n ? one : most), null);
}

/** What stands behind a promise, in sentences. */
export function promiseReasons(promise: JobPromise, { backlog }: Pick<BenchLoad, "backlog">, locale?: string): readonly string[] {
  const waits = promise.waits < 0.005 ? "" : ` About ${number(promise.waits * 100, 0, locale)} in 100 such jobs wait for a part, counted in.`;
  const { missing } = promise, part = missing === null ? "" : ` Not on the shelf: ${missing.name}${missing.due_on === null ? "" : `, due ${date(missing.due_on, locale)}`}.`;
  return [
    `Half of such reels are ready by ${promiseDay(promise.middle, locale)}, 8 of 10 by the day promised (${count(promise.n, "job", "jobs", locale)} of this kind behind the times).`,
    `Before it: ${count(backlog.open, "reel", "reels", locale)} in the shop, about ${number(backlog.hours, 0, locale)} hours of work.${waits}${part}`,
  ];
}

/** How dates of this kind would have been kept. */
export function keptSentence({ kept }: Pick<BenchLoad, "kept">, locale?: string): string {
  if (!kept) return "Too few reels came and went in the last year to say how such dates would have been kept.";
  const added = kept.added_days > 0 ? ` As earlier dates came out short, ${count(kept.added_days, "day is", "days are", locale)} added to each.` : "";
  return `Over the last year such dates would have been kept for ${share(kept.kept, kept.n, locale)} of the reels looked at, the usual one ${count(kept.days, "day", "days", locale)} ahead; “two weeks” for everything for ${share(kept.two_weeks, kept.n, locale)}.${added}`;
}

const over = (weeks: readonly LoadWeek[]) => weeks.filter(({ hours, capacity_hours }) => capacity_hours !== null && hours.mean > capacity_hours);

/** The half year ahead in a few sentences. */
export function loadSentence(load: BenchLoad, locale?: string): string {
  if (load.status !== "ok") return load.status_text;
  const full = over(load.weeks), most = fullest(load.weeks), first = full[0];
  if (!first || !most) return "In no week ahead do the reels take more hours than the bench has.";
  const wait = load.weeks.reduce((longest, { wait: of }) => Math.max(longest, of?.most ?? 0), 0);
  return `In ${count(full.length, "week", "weeks", locale)} of the ${number(load.weeks.length, 0, locale)} ahead the reels take more hours than the bench has, the first in the week of ${date(first.monday, locale)}. `
    + `The line is longest at the end of the week of ${date(most.monday, locale)}: about ${number(most.line_hours.mean, 0, locale)} hours of work (likely ${number(most.line_hours.low, 0, locale)} to ${number(most.line_hours.high, 0, locale)}). `
    + `In the worst week 8 of 10 reels are ready within ${number(wait, 0, locale)} days.`;
}

/** Where the hours there are come from. */
export function capacitySentence({ capacity, overhead_min, overhead_from }: BenchLoad, locale?: string): string {
  const aside = overhead_from === "written" ? `${number(overhead_min, 0, locale)} minutes a reel beside the work, as you wrote` : `${number(overhead_min, 0, locale)} minutes a reel beside the work, an assumption until you write yours`;
  if (!capacity) return `Counted with ${aside}.`;
  const hours = number(capacity.hours_a_week, 0, locale);
  return capacity.from === "written" ? `Counted with ${hours} hours a week, as you wrote, and ${aside}.` : `Counted with ${hours} hours a week, what the shop got done in its busy weeks (${number(capacity.weeks, 0, locale)} weeks looked at) until you write yours, and ${aside}.`;
}

/** Words over the forecast when the records are short; "" when they are not. */
export const SHORT: Readonly<Record<SeasonStatus, string>> = {
  ok: "", "one to two years": "One to two years of records", "under a year": "Under a year of records", "too few weeks": "Too few weeks", "no records": "No tickets",
};

/** The rush and the slack of the year, as seen. */
export function monthsSentence({ months }: Pick<Season, "months">, locale?: string): string {
  if (months.length === 0) return "There is no whole year of records yet, so no month can be set beside another.";
  const sorted = [...months].sort((a, b) => b.index - a.index), most = sorted[0], least = sorted.at(-1), total = months.reduce((sum, { tickets }) => sum + tickets, 0);
  if (!most || !least) return "";
  return `${monthName(most.month, locale)} brings ${number(most.index, 2, locale)} times the reels of an average month, ${monthName(least.month, locale)} ${number(least.index, 2, locale)} times (${count(total, "reel", "reels", locale)}).`;
}

export const SEASON_CAUTIONS: readonly string[] = [
  "Reels are worked off in the order they come. Where some are taken first, such as a charter's, the others wait longer than shown.",
  "A forecast knows only the past: a new rival, a fishing ban or a club that leaves is not in it.",
  "Ranges hold in 8 of 10 cases, so that 1 week in 10 brings more and 1 in 10 fewer.",
];

/** Where the reels of a week are listed, each with its file and line. */
export const weekRowsLink = (monday: string): string => rowsBehindLink({ of: "reels", from: monday, to: dayAfter(monday, 6) });
