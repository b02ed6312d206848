import type { Engine } from "../../db/engine.ts";
import { packedRows } from "../../db/packed-rows.ts";
import { EVERYTHING, filterValues } from "../filter.ts";
import type { RecordsFilter } from "../filter.ts";
import { KeptWorker } from "../kept-worker.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { BenchRates } from "./bench-rates.ts";
import { JOBS } from "./kept-jobs.ts";
import type { AskedKeptLabour } from "./kept-labour.ts";
import type { LabourChanges, LabourTimes } from "./labour-page.ts";
import workSql from "./work.sql?raw";

/** The picture goes before what stands below it. */
const FIRST = 0, AFTER = 1;

/**
 * Labour as its room asks for it: finished jobs are counted once for each state of the records and kept in a worker, so that a changed
 * filter asks the engine nothing. The answers are those of `labourPage`.
 */
export class KeptLabour {
  readonly #worker: KeptWorker<AskedKeptLabour>;

  constructor(started: () => Worker) { this.#worker = new KeptWorker(started); }

  /** Times, single jobs and money. @throws the signal's reason when called off, as the next one */
  async times(engine: Engine, version: number, filter: RecordsFilter, rates: BenchRates, means: WorkMeans): Promise<LabourTimes> {
    const worker = await this.#ready(engine, version, means);
    return worker.ask<LabourTimes>({ kind: "times", filter, rates }, means, FIRST);
  }

  /** What goes with longer jobs, and how they changed. */
  async changes(engine: Engine, version: number, filter: RecordsFilter, means: WorkMeans): Promise<LabourChanges> {
    const worker = await this.#ready(engine, version, means);
    return worker.ask<LabourChanges>({ kind: "changes", filter }, means, AFTER);
  }

  /** Ends the worker with everything it keeps. */
  forget(): void { this.#worker.inState(); }

  /** Sees that the worker keeps the jobs of the records as they are now. */
  async #ready(engine: Engine, version: number, { signal, report }: WorkMeans): Promise<KeptWorker<AskedKeptLabour>> {
    const worker = this.#worker.inState(engine, version);
    report?.({ step: "Going through the jobs", done: 0, total: 4 });
    await worker.hold(JOBS, (stop) => packedRows(engine, workSql, filterValues(EVERYTHING), stop), signal);
    return worker;
  }
}

/** The one of the page. */
export const keptLabour = new KeptLabour(() => new Worker(new URL("./kept-labour.worker.ts", import.meta.url), { type: "module", name: "kept labour" }));
