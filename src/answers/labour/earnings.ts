import { quantile } from "../../stats/quantile.ts";
import { ratioOfTotals } from "../../stats/ratio-of-totals.ts";
import { grouped, groupsOf } from "../grouped.ts";
import type { BenchRates } from "./bench-rates.ts";
import type { TimedWork } from "./work.ts";

/** How a job stands beside what an hour should bring in. */
export type Standing = "below its cost" | "under your price" | "about your price" | "over your price" | "too few jobs" | "no rate written";

/** What a job brings in for an hour at the bench. Money is the shop's own; parts are not in it. */
export interface Earning {
  readonly job: string | null;
  readonly reel_kind: string | null;
  /** `*`: all tiers; null: not written. */
  readonly tier: string | null;
  /** `*`: all makers and models. */
  readonly maker: string | null;
  readonly model: string;
  /** Paid jobs with believable minutes and a labour charge. */
  readonly jobs: number;
  readonly hours: number;
  readonly charged: number;
  readonly per_hour: number | null;
  readonly per_hour_low: number | null;
  readonly per_hour_high: number | null;
  /** The middle charge of its last year. */
  readonly usual_charge: number | null;
  /** The charge at which its mean time would bring in the hour's price. */
  readonly fair_charge: number | null;
  /** What it brought in a year beside the hour's price: negative is money not earned. */
  readonly gap_per_year: number | null;
  readonly standing: Standing;
}

/** What was done without pay. */
export interface Unpaid { readonly jobs: number; readonly hours: number }

export interface Earnings {
  /** A job × kind of reel, followed by its tiers and then its models with enough jobs; what falls furthest short of the price first. */
  readonly rows: readonly Earning[];
  readonly warranty: Unpaid;
  /** Paid jobs without a charge written: not in the figures. */
  readonly uncharged: Unpaid;
  readonly all: Earning | null;
}

/** A range, and a word, is given from this many jobs on. */
const FEWEST = 10;
const YEAR = 365.25;

type Paid = TimedWork & { readonly labour_charge: number };
type Named = Pick<Earning, "job" | "reel_kind" | "tier" | "maker" | "model">;

const hoursOf = (rows: readonly TimedWork[]) => rows.reduce((sum, { labour_min }) => sum + labour_min, 0) / 60;
const unpaid = (rows: readonly TimedWork[]): Unpaid => ({ jobs: rows.length, hours: hoursOf(rows) });

function standing(jobs: number, low: number | null, high: number | null, { hour_price, hour_cost }: BenchRates): Standing {
  if (hour_price === null && hour_cost === null) return "no rate written";
  if (jobs < FEWEST || low === null || high === null) return "too few jobs";
  if (hour_cost !== null && high < hour_cost) return "below its cost";
  if (hour_price === null) return "no rate written";
  return high < hour_price ? "under your price" : low > hour_price ? "over your price" : "about your price";
}

/** The middle charge of the last twelve months of the records that the group is in. */
function usualCharge(rows: readonly Paid[]): number | null {
  const last = rows.at(-1)?.received_on;
  if (last === undefined) return null;
  const from = `${Number(last.slice(0, 4)) - 1}${last.slice(4)}`;
  return quantile(rows.filter(({ received_on }) => received_on > from).map(({ labour_charge }) => labour_charge), 0.5);
}

interface Over { readonly rates: BenchRates; readonly years: number | null }

function earning(rows: readonly Paid[], name: Named, { rates, years }: Over): Earning {
  const jobs = rows.length, hours = hoursOf(rows), charged = rows.reduce((sum, { labour_charge }) => sum + labour_charge, 0);
  const { ratio, low, high } = ratioOfTotals(rows.map(({ labour_charge }) => labour_charge), rows.map(({ labour_min }) => labour_min / 60));
  const known = jobs >= FEWEST, price = rates.hour_price;
  return {
    ...name, jobs, hours, charged, per_hour: ratio, per_hour_low: known ? low : null, per_hour_high: known ? high : null,
    usual_charge: usualCharge(rows), fair_charge: price === null ? null : (price * hours) / jobs,
    gap_per_year: price === null || years === null ? null : (charged - price * hours) / years,
    standing: standing(jobs, low, high, rates),
  };
}

const ALL = { tier: "*", maker: "*", model: "*" };

/** One job on one kind of reel, then its tiers, then its models. */
function ofJob(rows: readonly Paid[], over: Over): Earning[] {
  const [first] = rows;
  if (!first) return [];
  const { job, reel_kind } = first, name = { job, reel_kind, ...ALL };
  const tiers = [...grouped(rows, ({ tier }) => tier)].filter(([, some]) => some.length >= FEWEST && some.length < rows.length);
  const models = groupsOf(rows, ({ maker }) => maker, ({ model }) => model).filter((some) => some.length >= FEWEST);
  const worst = (a: Earning, b: Earning) => (a.per_hour ?? 0) - (b.per_hour ?? 0) || (a.model < b.model ? -1 : 1);
  return [
    earning(rows, name, over),
    ...tiers.map(([tier, some]) => earning(some, { ...name, tier }, over)).sort(worst),
    ...models.flatMap((some) => (some[0] ? [earning(some, { ...name, maker: some[0].maker, model: some[0].model }, over)] : [])).sort(worst),
  ];
}

/** Years from the first job to the last, at least a quarter of one: a shop of six weeks has no yearly figure. */
function span(rows: readonly TimedWork[]): number | null {
  const first = rows[0]?.received_on, last = rows.at(-1)?.received_on;
  if (first === undefined || last === undefined) return null;
  const years = (Date.parse(last) - Date.parse(first)) / (YEAR * 86_400_000);
  return years < 0.25 ? null : years;
}

/**
 * What each job brings in for an hour at the bench, beside the price and the cost the owner gave.
 *
 * Warranty jobs are unpaid by intent and stand apart. Minutes beside the bench are in the hour's cost, not in its minutes.
 *
 * @param rows finished jobs with believable minutes, oldest first
 */
export function earnings(rows: readonly TimedWork[], rates: BenchRates): Earnings {
  const paid = rows.filter(({ warranty }) => !warranty), over = { rates, years: span(rows) };
  const charged = paid.filter((row): row is Paid => row.labour_charge !== null);
  const jobs = groupsOf(charged, ({ job }) => job, ({ reel_kind }) => reel_kind).map((some) => ofJob(some, over));
  const short = ([whole]: Earning[]) => whole?.gap_per_year ?? -(whole?.jobs ?? 0);
  return {
    rows: jobs.sort((a, b) => short(a) - short(b)).flat(),
    warranty: unpaid(rows.filter(({ warranty }) => warranty)), uncharged: unpaid(paid.filter(({ labour_charge }) => labour_charge === null)),
    all: charged.length === 0 ? null : earning(charged, { job: "*", reel_kind: "*", ...ALL }, over),
  };
}
