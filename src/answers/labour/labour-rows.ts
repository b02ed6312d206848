import { lognormalSummary } from "../../stats/lognormal-summary.ts";
import { pooledTimes } from "../../stats/pooled-times.ts";
import type { PooledTime } from "../../stats/pooled-times.ts";
import { groupsOf } from "../grouped.ts";
import type { LabourRow, MinutesRow } from "./labour.ts";
import type { Slip } from "./slips.ts";

interface Sorted {
  readonly row: Pick<MinutesRow, "job" | "reel_kind" | "maker" | "model" | "labour_min" | "warranty" | "in_batch">;
  readonly slip: Slip | null;
}

/** A model has a row of its own from this many jobs on. */
const FEWEST_FOR_MODEL = 10;
const POOLED_WORDS = {
  fitted: "", "no difference between groups": "no difference between models", "few groups, fixed prior": "few models: drawn only weakly toward the others",
};

/** Minutes that can be believed, and the tickets they stand on; counts of the others. */
interface Counted { readonly minutes: readonly number[]; readonly warranty: number; readonly in_batches: number; readonly blank: number; readonly typed_as_hours: number; readonly with_waiting: number }

function counted(group: readonly Sorted[]): Counted {
  const minutes: number[] = [];
  let warranty = 0, in_batches = 0, blank = 0, typed_as_hours = 0, with_waiting = 0;
  for (const { row, slip } of group) {
    if (row.labour_min === null) blank += 1;
    if (slip === "typed as hours") typed_as_hours += 1;
    if (slip === "with waiting") with_waiting += 1;
    if (row.labour_min === null || slip !== null) continue;
    minutes.push(row.labour_min);
    if (row.warranty) warranty += 1;
    if (row.in_batch) in_batches += 1;
  }
  return { minutes, warranty, in_batches, blank, typed_as_hours, with_waiting };
}

/** Times of a group with what is known of them, or nulls and why. */
function times(values: readonly number[]) {
  if (values.length === 0) return { n: 0, median: null, mean: null, mean_low: null, mean_high: null, p80: null, p90: null, why: "no minutes written" };
  const { n, median, mean, p80, p90, curve, reason } = lognormalSummary(values);
  const why = [p80 === null ? "too few for P80" : "", reason === null ? "" : `no range: ${reason}`].filter((part) => part !== "").join("; ");
  return { n, median, mean, mean_low: curve?.meanLow ?? null, mean_high: curve?.meanHigh ?? null, p80, p90, why };
}

interface Group { readonly first: Sorted["row"] | undefined; readonly of: Counted }
const groupOf = (group: readonly Sorted[]): Group => ({ first: group[0]?.row, of: counted(group) });

function described({ first, of: { minutes, ...counts } }: Group, name: Pick<LabourRow, "maker" | "model">, pooled: PooledTime | null, pooled_note: string): LabourRow {
  const { why, ...figures } = times(minutes);
  return {
    job: first?.job ?? null, reel_kind: first?.reel_kind ?? null, ...name, ...figures,
    pooled_median: pooled?.median ?? null, pooled_p80: pooled?.p80 ?? null, pooled_p90: pooled?.p90 ?? null, ...counts,
    note: [why, pooled_note].filter((part) => part !== "").join("; "),
  };
}

/** One job on one kind of reel: all models together, then each model with enough jobs, most first. */
function jobRows(group: readonly Sorted[]): LabourRow[] {
  const models = groupsOf(group, ({ row }) => row.maker, ({ row }) => row.model).map(groupOf).filter(({ of }) => of.minutes.length > 0);
  const pooled = models.length === 0 ? null : pooledTimes(models.map(({ of }) => of.minutes));
  const words = pooled === null ? "" : "reason" in pooled ? `not pooled: ${pooled.reason}` : POOLED_WORDS[pooled.status];
  const rows = models.flatMap((some, i) => {
    const time = pooled !== null && "times" in pooled ? pooled.times[i] ?? null : null;
    return some.first === undefined || some.of.minutes.length < FEWEST_FOR_MODEL ? [] : [described(some, { maker: some.first.maker, model: some.first.model }, time, words)];
  });
  const order = (a: LabourRow, b: LabourRow) => b.n - a.n || (a.model === b.model ? 0 : a.model < b.model ? -1 : 1);
  return [described(groupOf(group), { maker: "*", model: "*" }, null, "pooled figures stand by model"), ...rows.sort(order)];
}

const named = (group: readonly Sorted[]) => JSON.stringify([group[0]?.row.job, group[0]?.row.reel_kind]);

/** Rows of every job and kind of reel, the most frequent first; what no job is written for comes as any other. */
export function labourRows(tickets: readonly Sorted[]): LabourRow[] {
  const jobs = groupsOf(tickets, ({ row }) => row.job, ({ row }) => row.reel_kind);
  return jobs.sort((one, other) => other.length - one.length || (named(one) < named(other) ? -1 : 1)).flatMap(jobRows);
}
