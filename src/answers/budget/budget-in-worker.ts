import { askWorker } from "../worker-work.ts";
import type { BudgetWork } from "./ask-budget.ts";

/** Chooses in a worker of its own, so that the page stays awake; a cancel ends it at once. */
export const budgetInWorker: BudgetWork = (records, means) =>
  askWorker(() => new Worker(new URL("./budget.worker.ts", import.meta.url), { type: "module", name: "budget" }), records, means);
