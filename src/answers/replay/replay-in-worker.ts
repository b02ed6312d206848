import { askWorker } from "../worker-work.ts";
import type { ReplayWork } from "./ask-replay.ts";

/** Replays in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const replayInWorker: ReplayWork = (records, means) =>
  askWorker(() => new Worker(new URL("./replay.worker.ts", import.meta.url), { type: "module", name: "replay" }), records, means);
