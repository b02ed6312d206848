import { answerIn } from "../worker-work.ts";
import { replayOf } from "./replay-of.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, replayOf);
