import { answerIn } from "../worker-work.ts";
import { workAsked } from "./bench-messages.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, workAsked);
