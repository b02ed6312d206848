import { sampleStandardDeviation } from "simple-statistics";
import { stratumLevels } from "../../stats/stratum-levels.ts";
import { grouped } from "../grouped.ts";
import type { LabourRow, MinutesRow } from "./labour.ts";
import { labourRows } from "./labour-rows.ts";
import { withSlips } from "./slips.ts";
import type { Slip } from "./slips.ts";

/** So many jobs of one shop that took as long, with nothing else to tell them apart. */
export type JobsAlike = Pick<MinutesRow, "maker" | "model" | "labour_min" | "warranty" | "in_batch"> & { readonly shop: string; readonly slip: Slip | null; readonly jobs: number };
type JobName = Pick<MinutesRow, "job" | "reel_kind">;

/** Bench minutes at the pace of the usual shop. */
export interface LabourOfShops extends LabourRow {
  /** That the jobs behind the figures come from. */
  readonly shops: number;
  /** Times as long, or as short, as the usual shop: two shops in three lie within it. Null under five shops with thirty jobs, and by model. */
  readonly between_shops: number | null;
}

const SPREAD = { shops: 5, jobs: 30 } as const;

/** One shop's jobs, those alike put together; typing slips are held against the shop's own usual times. */
export function jobsAlike(rows: readonly MinutesRow[]): (Omit<JobsAlike, "shop"> & JobName)[] {
  const sorted = withSlips(rows).map(({ row: { job, reel_kind, maker, model, labour_min, warranty, in_batch }, slip }) => ({ job, reel_kind, maker, model, labour_min, slip, warranty, in_batch }));
  return [...grouped(sorted, (one) => JSON.stringify(one)).values()].map((group) => ({ ...(group[0] as (typeof sorted)[number]), jobs: group.length }));
}

type Counted = JobsAlike & { readonly labour_min: number };
const countedOf = (alike: readonly JobsAlike[]) => alike.filter((one): one is Counted => one.labour_min !== null && one.slip === null);
const modelOf = ({ maker, model }: Pick<JobsAlike, "maker" | "model">) => JSON.stringify([maker, model]);
const jobsIn = (alike: readonly JobsAlike[]) => alike.reduce((sum, { jobs }) => sum + jobs, 0);

/** Logarithm of how many times as long each shop takes, the same models held beside each other. */
function paces(counted: readonly Counted[]): ReadonlyMap<string, number> {
  const shops = [...new Set(counted.map(({ shop }) => shop))], models = [...new Set(counted.map(modelOf))];
  const stratum = new Map(shops.map((shop, i) => [shop, i])), kind = new Map(models.map((model, i) => [model, i]));
  const cells = [...grouped(counted, (one) => JSON.stringify([one.shop, modelOf(one)])).values()].map((group) => {
    const first = group[0] as Counted, n = jobsIn(group);
    return { stratum: stratum.get(first.shop) ?? 0, kind: kind.get(modelOf(first)) ?? 0, n, mean: group.reduce((sum, { jobs, labour_min }) => sum + jobs * Math.log(labour_min), 0) / n };
  });
  const levels = stratumLevels(cells);
  return new Map(shops.map((shop, i) => [shop, levels[i] ?? 0]));
}

function spreadOf(pace: ReadonlyMap<string, number>, counted: readonly Counted[]): number | null {
  const enough = [...grouped(counted, ({ shop }) => shop)].filter(([, of]) => jobsIn(of) >= SPREAD.jobs).map(([shop]) => pace.get(shop) ?? 0);
  return enough.length < SPREAD.shops ? null : Math.exp(sampleStandardDeviation(enough));
}

/**
 * How long one job on one kind of reel takes at the pace of the usual shop: each shop's minutes are brought to it by how many times as
 * long that shop takes for the same models (`stratumLevels` of the logarithms), so that a model that mostly comes to a slow shop does not
 * look slow itself. One shop alone is its own usual shop.
 *
 * @param alike jobs of all shops
 * @returns all models together, then each with ten jobs or more
 */
export function labourOfShops(name: JobName, alike: readonly JobsAlike[]): LabourOfShops[] {
  const counted = countedOf(alike), pace = paces(counted), spread = spreadOf(pace, counted);
  const sorted = alike.flatMap(({ shop, jobs, slip, labour_min, ...row }) => {
    const at_usual = labour_min === null ? null : labour_min * Math.exp(-(pace.get(shop) ?? 0));
    return Array<{ row: typeof row & JobName & { labour_min: number | null }; slip: Slip | null }>(jobs).fill({ row: { ...row, ...name, labour_min: at_usual }, slip });
  });
  return labourRows(sorted).map((row) => {
    const of = row.model === "*" ? counted : counted.filter((one) => one.model === row.model && one.maker === row.maker);
    return { ...row, shops: new Set(of.map(({ shop }) => shop)).size, between_shops: row.model === "*" ? spread : null };
  });
}
