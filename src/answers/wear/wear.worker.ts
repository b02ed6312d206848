import { answerWear } from "./wear-messages.ts";

answerWear(self as unknown as DedicatedWorkerGlobalScope);
