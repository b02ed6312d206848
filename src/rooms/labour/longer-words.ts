import type { Drift } from "../../answers/labour/drift.ts";
import { jobName } from "../../answers/labour/job-name.ts";
import type { Driver, ShopYear, TakesLonger, TechnicianYear } from "../../answers/labour/what-takes-longer.ts";
import { count, DASH, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

const right = { align: "right" } as const;
type Ratio = { readonly ratio?: number; readonly low?: number; readonly high?: number };

/** A change as percent longer or shorter. */
const change = (ratio: number, locale?: string) => `${number(Math.abs(ratio - 1) * 100, 0, locale)} % ${ratio >= 1 ? "longer" : "shorter"}`;

/** The two ends of a range of changes: "5 to 6 % longer", or "7 % shorter to 1 % longer". */
function changes(low: number, high: number, locale?: string): string {
  if (low < 1 && high >= 1) return `likely ${change(low, locale)} to ${change(high, locale)}`;
  const [near, far] = low >= 1 ? [low, high] : [high, low];
  return `likely ${number(Math.abs(near - 1) * 100, 0, locale)} to ${change(far, locale)}`;
}

/** How much longer or shorter, in words; the range behind it. "" when it is not told. */
export function longerBy({ ratio, low, high }: Ratio, locale?: string): string {
  if (ratio === undefined || low === undefined || high === undefined) return "";
  return `${low <= 1 && high >= 1 ? "no difference to be seen" : change(ratio, locale)} (${changes(low, high, locale)})`;
}

const HEADS: Readonly<Record<Driver["name"], string>> = {
  "each part replaced": "Each part replaced", "a stuck screw": "A stuck or stripped screw", "under warranty": "Work under warranty", "reels that came together": "Reels that came together",
};

/** One sentence for each thing that goes with longer jobs. */
export const driverSentences = ({ drivers }: TakesLonger, locale?: string): readonly string[] => drivers.map((one) => {
  const words = longerBy(one, locale);
  return `${HEADS[one.name]}: ${words === "" ? "too few jobs to say" : words}, ${count(one.jobs, "job", "jobs", locale)}.`;
});

/** A technician's year, one line. */
export const technicianColumns = (beside: string): readonly Column<TechnicianYear>[] => [
  { key: "technician", label: "Who", value: (row) => row.technician },
  { key: "year", label: "Year", value: (row) => row.year, text: (row) => String(row.year) },
  { key: "jobs", label: "Jobs", ...right, value: (row) => row.jobs, text: (row) => number(row.jobs) },
  { key: "ratio", label: "The same jobs", unit: `times ${beside}`, ...right, value: (row) => row.ratio ?? null, text: (row) => number(row.ratio, 2) },
  { key: "low", label: "Likely", value: (row) => row.low ?? null, text: (row) => (row.low === undefined ? DASH : `${number(row.low, 2)} to ${number(row.high, 2)}`) },
  { key: "unadjusted", label: "All jobs as they came", unit: "not a fair comparison", ...right, value: (row) => row.unadjusted, text: (row) => number(row.unadjusted, 2) },
];

/** What the technicians' picture says. */
export function technicianSentence({ technicians, beside }: TakesLonger, locale?: string): string {
  const told = technicians.filter((one) => one.ratio !== undefined);
  if (beside === null || told.length === 0) return "Too few jobs have a technician's initials to hold the same jobs beside each other.";
  const names = [...new Set(told.map(({ technician }) => technician))];
  const stories = names.map((name) => {
    const own = told.filter(({ technician }) => technician === name), first = own[0], last = own.at(-1);
    if (!first || !last) return "";
    const one = (year: TechnicianYear) => `${number(year.ratio, 2, locale)} times as long in ${year.year}`;
    if (first === last) return `${name} took ${one(first)}.`;
    const learned = (first.low ?? 0) > (last.high ?? 0) ? ": learning shows" : (last.low ?? 0) > (first.high ?? 0) ? ": slower than before, ask why" : "";
    return `${name} took ${one(first)} and ${one(last)}${learned}.`;
  });
  return `Beside ${beside}, who did most jobs, and on the same jobs and models: ${stories.join(" ")}`;
}

/** The whole shop from year to year. */
export const yearSentences = (years: readonly ShopYear[], locale?: string): readonly string[] =>
  years.flatMap((one) => (one.ratio === undefined ? [] : [`${one.year} beside the first year, the same jobs by the same hands: ${longerBy(one, locale)}, ${count(one.jobs, "job", "jobs", locale)}.`]));

const VERDICTS: Readonly<Record<Drift["verdict"], string>> = {
  longer: "takes longer than it did", shorter: "takes less than it did", "no change to be seen": "no change to be seen", "too few jobs": "too few jobs to say",
};

/** One job's change in a sentence. */
export function driftSentence(drift: Drift, locale?: string): string {
  const { per_year, n, verdict } = drift, jobs = count(n, "job", "jobs", locale), name = jobName(drift).replace(/^./, (letter) => letter.toUpperCase());
  if (per_year === null) return `${name}: ${VERDICTS[verdict]} (${jobs}).`;
  return `${name}: ${VERDICTS[verdict]}; ${changes(per_year.low, per_year.high, locale)} with each year, the same models by the same hands (${jobs}).`;
}

/** Half years of one job, as a table. */
export const HALF_COLUMNS: readonly Column<Drift["halves"][number]>[] = [
  { key: "from", label: "Half year", value: (row) => row.from, text: (row) => `${row.from.slice(0, 4)}, ${row.from.slice(5, 7) === "01" ? "first" : "second"} half` },
  { key: "n", label: "Jobs", ...right, value: (row) => row.n, text: (row) => number(row.n) },
  { key: "median", label: "Usual", unit: "min", ...right, value: (row) => row.median, text: (row) => number(row.median) },
  { key: "low", label: "Likely", unit: "min", value: (row) => row.low, text: (row) => (row.low === null || row.high === null ? DASH : `${number(row.low)} to ${number(row.high)}`) },
];
