import { answerBench } from "./bench-messages.ts";

answerBench(self as unknown as DedicatedWorkerGlobalScope);
