import { lognormalSummary } from "../../stats/lognormal-summary.ts";
import { pooledTimes } from "../../stats/pooled-times.ts";
import type { PooledTime } from "../../stats/pooled-times.ts";
import { grouped } from "../grouped.ts";
import type { LabourRow, MinutesRow } from "./labour.ts";
import type { Slip } from "./slips.ts";

interface Sorted {
  readonly row: MinutesRow;
  readonly slip: Slip | null;
}

/** A model has a row of its own from this many jobs on. */
const FEWEST_FOR_MODEL = 10;
const POOLED_WORDS = {
  fitted: "", "no difference between groups": "no difference between models", "few groups, fixed prior": "few models: drawn only weakly toward the others",
};

const modelOf = ({ row: { maker, model } }: Sorted) => JSON.stringify([maker, model]);
const counted = (group: readonly Sorted[]) => group.filter(({ row, slip }) => row.labour_min !== null && slip === null);
const minutes = (group: readonly Sorted[]) => counted(group).flatMap(({ row }) => (row.labour_min === null ? [] : [row.labour_min]));

/** Times of a group with what is known of them, or nulls and why. */
function times(values: readonly number[]) {
  if (values.length === 0) return { n: 0, median: null, mean: null, mean_low: null, mean_high: null, p80: null, p90: null, why: "no minutes written" };
  const { n, median, mean, p80, p90, curve, reason } = lognormalSummary(values);
  const why = [p80 === null ? "too few for P80" : "", reason === null ? "" : `no range: ${reason}`].filter((part) => part !== "").join("; ");
  return { n, median, mean, mean_low: curve?.meanLow ?? null, mean_high: curve?.meanHigh ?? null, p80, p90, why };
}

function described(group: readonly Sorted[], name: Pick<LabourRow, "maker" | "model">, pooled: PooledTime | null, pooled_note: string): LabourRow {
  const { why, ...figures } = times(minutes(group)), first = group[0]?.row, used = counted(group);
  return {
    job: first?.job ?? null, reel_kind: first?.reel_kind ?? null, ...name, ...figures,
    pooled_median: pooled?.median ?? null, pooled_p80: pooled?.p80 ?? null, pooled_p90: pooled?.p90 ?? null,
    warranty: used.filter(({ row }) => row.warranty).length, in_batches: used.filter(({ row }) => row.in_batch).length,
    blank: group.filter(({ row }) => row.labour_min === null).length,
    typed_as_hours: group.filter(({ slip }) => slip === "typed as hours").length,
    with_waiting: group.filter(({ slip }) => slip === "with waiting").length,
    note: [why, pooled_note].filter((part) => part !== "").join("; "),
  };
}

/** One job on one kind of reel: all models together, then each model with enough jobs, most first. */
function jobRows(group: readonly Sorted[]): LabourRow[] {
  const models = [...grouped(group, modelOf).values()].filter((rows) => counted(rows).length > 0);
  const pooled = models.length === 0 ? null : pooledTimes(models.map(minutes));
  const words = pooled === null ? "" : "reason" in pooled ? `not pooled: ${pooled.reason}` : POOLED_WORDS[pooled.status];
  const rows = models.flatMap((rows, i) => {
    const first = rows[0]?.row, time = pooled !== null && "times" in pooled ? pooled.times[i] ?? null : null;
    return first === undefined || counted(rows).length < FEWEST_FOR_MODEL ? [] : [described(rows, { maker: first.maker, model: first.model }, time, words)];
  });
  const order = (a: LabourRow, b: LabourRow) => b.n - a.n || (a.model === b.model ? 0 : a.model < b.model ? -1 : 1);
  return [described(group, { maker: "*", model: "*" }, null, "pooled figures stand by model"), ...rows.sort(order)];
}

/** Rows of every job and kind of reel, the most frequent first; what no job is written for comes as any other. */
export function labourRows(tickets: readonly Sorted[]): LabourRow[] {
  const jobs = grouped(tickets, ({ row: { job, reel_kind } }) => JSON.stringify([job, reel_kind]));
  return [...jobs].sort(([a, one], [b, other]) => other.length - one.length || (a < b ? -1 : 1)).flatMap(([, group]) => jobRows(group));
}
