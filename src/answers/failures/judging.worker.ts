import { answerIn } from "../worker-work.ts";
import { judge } from "./failure-verdicts.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, judge);
