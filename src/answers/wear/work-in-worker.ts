import { askWorker } from "../worker-work.ts";
import type { AskedWear, DoWork, WearWork } from "./wear-messages.ts";

const started = () => new Worker(new URL("./wear.worker.ts", import.meta.url), { type: "module", name: "wear" });

/** Works in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const workInWorker: DoWork = (kind, records, means) => askWorker<AskedWear, WearWork[typeof kind]["answer"]>(started, { kind, records } as AskedWear, means);
