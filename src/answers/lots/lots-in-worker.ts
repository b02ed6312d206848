import type { Engine } from "../../db/engine.ts";
import { askWorker } from "../worker-work.ts";
import type { WorkMeans } from "../worker-work.ts";
import type { Lots } from "./lot.ts";
import { lots } from "./lots.ts";

/**
 * `lots`, scanned in a worker of its own so that the page stays awake; a cancel ends it at once. The worker is started before the
 * counting, which takes as long as its script needs to be ready.
 */
export async function lotsInWorker(engine: Engine, { signal, report }: WorkMeans = {}): Promise<Lots> {
  signal?.throwIfAborted();
  const worker = new Worker(new URL("./scanning.worker.ts", import.meta.url), { type: "module", name: "scanning" });
  try {
    return await lots(engine, signal, { report, work: (asked, means) => askWorker(() => worker, asked, means) });
  } finally {
    worker.terminate();
  }
}
