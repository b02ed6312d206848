import type { Engine } from "../../db/engine.ts";
import { askWorker } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import { failureVerdicts } from "./failure-verdicts.ts";
import type { JudgeWork } from "./failure-verdicts.ts";
import type { VerdictFilter } from "./verdict-records.ts";
import type { Verdict } from "./verdict.ts";

/**
 * `failureVerdicts`, judged in a worker of its own so that the page stays awake; a cancel ends it at once. The worker is
 * started before the counting, which takes as long as its script needs to be ready.
 *
 * @param watch is told of the judging, to time it
 */
export async function verdictsInWorker(
  engine: Engine, filter: VerdictFilter, { signal, report }: WorkMeans = {}, watch: (work: JudgeWork) => JudgeWork = (work) => work,
): Promise<readonly Verdict[]> {
  signal?.throwIfAborted();
  const worker = new Worker(new URL("./judging.worker.ts", import.meta.url), { type: "module", name: "judging" });
  try {
    return await failureVerdicts(engine, filter, signal, { report, work: watch((asked, means) => askWorker(() => worker, asked, means)) });
  } finally {
    worker.terminate();
  }
}
