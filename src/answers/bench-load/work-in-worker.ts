import { askWorker } from "../worker-work.ts";
import type { AskedBench, BenchWork, DoBenchWork } from "./bench-messages.ts";

const started = () => new Worker(new URL("./bench.worker.ts", import.meta.url), { type: "module", name: "bench" });

/** Works in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const workInWorker: DoBenchWork = (kind, records, means) => askWorker<AskedBench, BenchWork[typeof kind]["answer"]>(started, { kind, records } as AskedBench, means);
