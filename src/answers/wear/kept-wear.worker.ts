import { keepIn } from "../kept-desk.ts";
import { KEPT_WEAR } from "./kept-wear.ts";

keepIn(self as unknown as DedicatedWorkerGlobalScope, KEPT_WEAR);
