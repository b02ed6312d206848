import { answerLooks } from "./look-messages.ts";

answerLooks(self as unknown as DedicatedWorkerGlobalScope);
