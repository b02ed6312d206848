import { keepIn } from "../kept-desk.ts";
import { KEPT_LABOUR } from "./kept-labour.ts";

keepIn(self as unknown as DedicatedWorkerGlobalScope, KEPT_LABOUR);
