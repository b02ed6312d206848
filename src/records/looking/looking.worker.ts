import { lookHere } from "./look.ts";
import { answerLooks } from "./look-messages.ts";

answerLooks(self as unknown as DedicatedWorkerGlobalScope, lookHere);
