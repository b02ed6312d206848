import type { RecordsFilter } from "../filter.ts";
import type { KeptWork } from "../kept-desk.ts";
import type { BenchRates } from "./bench-rates.ts";
import { jobsFrom, JOBS, keptJobs } from "./kept-jobs.ts";
import type { KeptJobs } from "./kept-jobs.ts";
import { labourChangesOf, labourTimesOf } from "./labour-page.ts";
import type { LabourChanges, LabourTimes } from "./labour-page.ts";

/** What a worker that keeps all finished jobs is asked. */
export type AskedKeptLabour = { readonly kind: "times"; readonly filter: RecordsFilter; readonly rates: BenchRates } | { readonly kind: "changes"; readonly filter: RecordsFilter };

/** Answers from jobs that are kept: what `labourPage` gives for the same question. */
export const KEPT_LABOUR: KeptWork<AskedKeptLabour, KeptJobs, LabourTimes | LabourChanges> = {
  unpack: (_, stream) => keptJobs(stream),
  work: async (asked, kept, means) => {
    const jobs = jobsFrom(kept(JOBS), asked.filter);
    return asked.kind === "times" ? labourTimesOf(jobs, asked.rates, means) : labourChangesOf(jobs, means);
  },
};
