import { answerIn } from "../worker-work.ts";
import { budgetOf } from "./budget-of.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, budgetOf);
