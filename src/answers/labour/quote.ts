import type { BenchRates } from "./bench-rates.ts";
import type { Earning } from "./earnings.ts";
import type { LabourRow } from "./labour.ts";

/** What to say at the counter for one job on one reel. Minutes, and the shop's own money without parts. */
export interface Quote {
  readonly jobs: number;
  /** The model's own jobs, evened out with the others of its kind; or all models of the kind. */
  readonly from: "this model" | "all models";
  readonly usual_min: number | null;
  readonly four_in_five_min: number | null;
  readonly nine_in_ten_min: number | null;
  /** What was usually charged in the last year of this job. */
  readonly usual_charge: number | null;
  /** At the hour's price: for the usual time, and so that four jobs in five are paid for. */
  readonly price_usual: number | null;
  readonly price_four_in_five: number | null;
  /** Why a figure is missing; "" when none is. */
  readonly note: string;
}

const at = (minutes: number | null, price: number | null) => (minutes === null || price === null ? null : (minutes / 60) * price);

/**
 * Time and price to name for a job.
 *
 * @param rows all of `labour`
 * @param earned all of `earnings`
 * @param model null for any model of the kind
 * @returns null when the shop has no finished job of this kind
 */
export function quote(
  rows: readonly LabourRow[], earned: readonly Earning[], rates: BenchRates,
  { job, reel_kind, maker, model }: { job: string | null; reel_kind: string | null; maker: string | null; model: string | null },
): Quote | null {
  const of = <Row extends { job: string | null; reel_kind: string | null }>(some: readonly Row[]) => some.filter((row) => row.job === job && row.reel_kind === reel_kind);
  const whole = of(rows).find((row) => row.model === "*");
  if (!whole || whole.n === 0) return null;
  const own = model === null ? undefined : of(rows).find((row) => row.model === model && row.maker === maker);
  const charges = of(earned), charge = charges.find((one) => one.model === model && one.maker === maker) ?? charges.find((one) => one.model === "*" && one.tier === "*");
  const usual = own?.pooled_median ?? own?.median ?? whole.median, four = own?.pooled_p80 ?? own?.p80 ?? whole.p80;
  const notes = [
    model !== null && !own ? "too few of this model: the times of all models of its kind" : "",
    four === null ? "too few jobs for a time that four in five keep" : "",
    rates.hour_price === null ? "no hour's price written: the price is what was charged" : "",
  ];
  return {
    jobs: own?.n ?? whole.n, from: own ? "this model" : "all models", usual_min: usual, four_in_five_min: four,
    nine_in_ten_min: own?.pooled_p90 ?? own?.p90 ?? whole.p90, usual_charge: charge?.usual_charge ?? null,
    price_usual: at(usual, rates.hour_price), price_four_in_five: at(four, rates.hour_price), note: notes.filter((one) => one !== "").join("; "),
  };
}
