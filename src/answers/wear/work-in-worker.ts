import { workOver } from "./wear-messages.ts";
import type { DoWork, WearWork } from "./wear-messages.ts";

/** Works in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const workInWorker: DoWork = async (kind, records, means) => {
  means.signal?.throwIfAborted();
  const worker = new Worker(new URL("./wear.worker.ts", import.meta.url), { type: "module", name: "wear" });
  try {
    return (await workOver(worker, { kind, records }, means)) as WearWork[typeof kind]["answer"];
  } finally {
    worker.terminate();
  }
};
