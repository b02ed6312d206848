import { answerIn } from "../worker-work.ts";
import { labourPageOf } from "./labour-page.ts";

answerIn(self as unknown as DedicatedWorkerGlobalScope, labourPageOf);
