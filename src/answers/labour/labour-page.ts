import type { Engine } from "../../db/engine.ts";
import { filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { takingTurns } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
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

/** Times by job, single jobs to draw, and what they bring in: what is looked at first. */
export interface LabourTimes {
  readonly labour: Labour;
  readonly ticks: readonly MinutesTicks[];
  readonly earned: Earnings;
}

/** What goes with longer jobs, and how they changed. */
export interface LabourChanges {
  readonly longer: TakesLonger;
  readonly drifts: readonly Drift[];
}

/** Everything that Labour shows. */
export interface LabourPage extends LabourTimes, LabourChanges {}

/** The times from finished jobs already counted. @throws the signal's reason when called off, as the next one */
export async function labourTimesOf(jobs: readonly WorkRow[], rates: BenchRates, means: WorkMeans = {}): Promise<LabourTimes> {
  const turn = takingTurns(means), sorted = withSlips(jobs), work = believed(sorted);
  await turn("How long each job takes", 1, 4);
  const labour = labourOf(sorted);
  await turn("What each job brings in", 2, 4);
  return { labour, ticks: minutesTicks(work), earned: earnings(work, rates) };
}

/** What else the same jobs tell. */
export async function labourChangesOf(jobs: readonly WorkRow[], means: WorkMeans = {}): Promise<LabourChanges> {
  const turn = takingTurns(means), work = believed(withSlips(jobs));
  await turn("What goes with longer jobs", 3, 4);
  const longer = whatTakesLonger(work);
  await turn("What goes with longer jobs", 3, 4);
  return { longer, drifts: drifts(work) };
}

/** Everything that Labour shows, asked of the engine. */
export async function labourPage(engine: Engine, filter: RecordsFilter, rates: BenchRates, means: WorkMeans = {}): Promise<LabourPage> {
  const jobs = await engine.rows<WorkRow>(workSql, filterValues(filter), means.signal);
  return { ...await labourTimesOf(jobs, rates, means), ...await labourChangesOf(jobs, means) };
}
