import { answerIn } from "../worker-work.ts";
import { workAsked } from "./wear-messages.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, workAsked);
