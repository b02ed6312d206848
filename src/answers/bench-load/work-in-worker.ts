import { workOver } from "./bench-messages.ts";
import type { BenchWork, DoBenchWork } from "./bench-messages.ts";

/** Works in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const workInWorker: DoBenchWork = async (kind, records, means) => {
  means.signal?.throwIfAborted();
  const worker = new Worker(new URL("./bench.worker.ts", import.meta.url), { type: "module", name: "bench" });
  try {
    return (await workOver(worker, { kind, records }, means)) as BenchWork[typeof kind]["answer"];
  } finally {
    worker.terminate();
  }
};
