import { jobName } from "../../answers/labour/job-name.ts";
import type { BenchRates } from "../../answers/labour/bench-rates.ts";
import type { Earning, Earnings } from "../../answers/labour/earnings.ts";
import type { Quote } from "../../answers/labour/quote.ts";
import { modelName } from "../../answers/model-name.ts";
import { count, DASH, minutes, money, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

const right = { align: "right" } as const;

/** Jobs on a kind of reel, all tiers and models together. */
export const wholeEarnings = ({ rows }: Earnings): readonly Earning[] => rows.filter(({ tier, model }) => tier === "*" && model === "*");

/** The tiers and models of one job. */
export const earningsInside = ({ rows }: Earnings, whole: Earning): readonly Earning[] =>
  rows.filter((row) => row !== whole && row.job === whole.job && row.reel_kind === whole.reel_kind);

/** What part of a job a row is about. */
export const insideName = (row: Earning): string => (row.model !== "*" ? modelName(row) : row.tier === null ? "tier not written" : `all ${row.tier} reels`);

const perHour = (row: Earning, currency: string) => (row.per_hour_low === null || row.per_hour_high === null ? DASH
  : `${number(row.per_hour_low)} to ${number(row.per_hour_high)}\u00a0${currency}`.trim());

/** One line for each job: what an hour of it brings in. */
export function moneyColumns(currency: string, name: (row: Earning) => string = jobName, label = "Job"): readonly Column<Earning>[] {
  const amount = (key: "per_hour" | "usual_charge" | "fair_charge" | "gap_per_year", heading: string, unit?: string): Column<Earning> =>
    ({ key, label: heading, ...(unit && { unit }), ...right, value: (row) => row[key], text: (row) => money(row[key], currency) });
  return [
    { key: "name", label, value: name },
    { key: "jobs", label: "Paid jobs", ...right, value: (row) => row.jobs, text: (row) => number(row.jobs) },
    { key: "hours", label: "Hours", ...right, value: (row) => row.hours, text: (row) => number(row.hours) },
    amount("per_hour", "Brings in", "an hour"),
    { key: "low", label: "Likely", value: (row) => row.per_hour_low, text: (row) => perHour(row, currency) },
    amount("usual_charge", "Usually charged"), amount("fair_charge", "Would have to be", "at your price"), amount("gap_per_year", "Beside your price", "a year"),
    { key: "standing", label: "Verdict", value: (row) => row.standing },
  ];
}

/** The room's sentence about money. */
export function moneySentence(earned: Earnings, { hour_price }: BenchRates, currency: string): string {
  const { all } = earned, [worst] = wholeEarnings(earned);
  if (!all || !worst) return "No finished job has both minutes and a labour charge, so nothing can be said about money.";
  const whole = `An hour at the bench brought in ${money(all.per_hour, currency)} over ${count(all.jobs, "paid job", "paid jobs")}, parts not counted`;
  if (hour_price === null) return `${whole}. Write your hour's price above to see which jobs fall short of it.`;
  const short = wholeEarnings(earned).filter(({ standing }) => standing === "under your price" || standing === "below its cost").length;
  const most = worst.gap_per_year === null || worst.gap_per_year >= 0 ? ""
    : ` Furthest short in a year: ${jobName(worst)}, ${money(-worst.gap_per_year, currency)} under what its hours would cost at your price.`;
  return `${whole}; your price is ${money(hour_price, currency)}. ${short === 0 ? "No job falls clearly short of it." : `${count(short, "job falls", "jobs fall")} clearly short of it.`}${most}`;
}

/** Reels told one by one. */
const MOST_TOLD = 3;

/** The reels whose usual charge falls furthest short of what their time comes to at the hour's price, one sentence each. */
export function shortReels(earned: Earnings, currency: string): readonly string[] {
  const short = earned.rows.flatMap((row) => (row.model === "*" || row.usual_charge === null || row.fair_charge === null || row.standing === "about your price" || row.usual_charge >= row.fair_charge
    ? [] : [{ row, usual: row.usual_charge, fair: row.fair_charge }]));
  return short.sort((a, b) => b.fair - b.usual - (a.fair - a.usual)).slice(0, MOST_TOLD).map(({ row, usual, fair }) =>
    `${modelName(row)}, ${row.job ?? "job not written"}: charged ${money(usual, currency)}, its time comes to ${money(fair, currency)} at your price (${count(row.jobs, "paid job", "paid jobs")}).`);
}

/** What was done unpaid, in sentences; empty when nothing was. */
export function unpaidSentences({ warranty, uncharged }: Earnings): readonly string[] {
  return [
    ...(warranty.jobs === 0 ? [] : [`Under warranty, unpaid and not in these figures: ${count(warranty.jobs, "job", "jobs")}, ${number(warranty.hours)} hours.`]),
    ...(uncharged.jobs === 0 ? [] : [`Without a labour charge written, not in these figures: ${count(uncharged.jobs, "job", "jobs")}, ${number(uncharged.hours)} hours.`]),
  ];
}

/** The quote in one sentence to say at the counter. */
export function quoteSentence(found: Quote, currency: string): string {
  if (found.usual_min === null) return `Done ${count(found.jobs, "time", "times")}: too few to name a time.`;
  const long = found.four_in_five_min === null ? "" : `; 4 in 5 are done within ${minutes(found.four_in_five_min)}`;
  const charge = found.usual_charge === null ? "" : ` Usually charged: ${money(found.usual_charge, currency)}.`;
  return `Usually ${minutes(found.usual_min)} at the bench${long} (${count(found.jobs, "job", "jobs")}, ${found.from}).${charge}`;
}
