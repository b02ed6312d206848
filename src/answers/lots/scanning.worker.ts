import { answerIn } from "../worker-work.ts";
import { scanLots } from "./lot-scan.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, scanLots);
