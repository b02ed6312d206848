import type { Engine } from "../../db/engine.ts";
import { packedRows, unpackedRows } from "../../db/packed-rows.ts";
import type { PackedRows } from "../../db/packed-rows.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import type { PlainWork, WorkMeans } from "../worker-work.ts";
import type { BenchRates } from "./bench-rates.ts";
import { drifts } from "./drift.ts";
import type { Drift } from "./drift.ts";
import { earnings } from "./earnings.ts";
import type { Earnings } from "./earnings.ts";
import { labourOf } from "./labour.ts";
import type { Labour } from "./labour.ts";
import { minutesTicks } from "./minutes-ticks.ts";
import type { MinutesTicks } from "./minutes-ticks.ts";
import { withSlips } from "./slips.ts";
import { whatTakesLonger } from "./what-takes-longer.ts";
import type { TakesLonger } from "./what-takes-longer.ts";
import { believed } from "./work.ts";
import type { WorkRow } from "./work.ts";
import workSql from "./work.sql?raw";

/** Finished jobs (`work.sql`), packed so that a worker and not the page makes rows of them. */
export interface LabourRecords { readonly jobs: PackedRows<WorkRow>; readonly rates: BenchRates }

/** Times by job, single jobs to draw, what they bring in, what goes with longer ones, and how they changed. */
export interface LabourPage {
  readonly labour: Labour;
  readonly ticks: readonly MinutesTicks[];
  readonly earned: Earnings;
  readonly longer: TakesLonger;
  readonly drifts: readonly Drift[];
}

export type DoLabour = PlainWork<LabourRecords, LabourPage>;

/** The page from records already counted; tells its steps. */
export const labourPageOf: DoLabour = async ({ jobs, rates }, { report }) => {
  const step = (name: string, done: number) => report?.({ step: name, done, total: 4 });
  step("Sorting the minutes", 0);
  const sorted = withSlips(unpackedRows(jobs)), work = believed(sorted);
  step("How long each job takes", 1);
  const labour = labourOf(sorted), ticks = minutesTicks(work);
  step("What each job brings in", 2);
  const earned = earnings(work, rates);
  step("What goes with longer jobs", 3);
  return { labour, ticks, earned, longer: whatTakesLonger(work), drifts: drifts(work) };
};

/** Everything that Labour shows. */
export async function labourPage(
  engine: Engine, filter: RecordsFilter, rates: BenchRates, means: WorkMeans = {}, work: DoLabour = labourPageOf,
): Promise<LabourPage> {
  return work({ jobs: await packedRows(engine, workSql, filterValues(filter), means.signal), rates }, means);
}
