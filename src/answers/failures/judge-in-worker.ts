import { askWorker } from "../worker-work.ts";
import type { JudgeWork } from "./failure-verdicts.ts";

/** Judges in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const judgeInWorker: JudgeWork = (asked, means) =>
  askWorker(() => new Worker(new URL("./judging.worker.ts", import.meta.url), { type: "module", name: "judging" }), asked, means);
