import type { Engine } from "../../db/engine.ts";
import { EVERYTHING } from "../filter.ts";
import type { FailureFilter, FailureRate } from "./failure-rate.ts";

export const ALL_FAILURES: FailureFilter = {
  ...EVERYTHING, opening: "*", denominator: "coverage", group: null, position: null,
};

/**
 * Failed among inspected, for every position and model: first the position over all models (`*`), then model by model.
 * Positions in the order of the position list, models by name.
 */
export async function failureRates(_engine: Engine, _filter: FailureFilter, _signal?: AbortSignal): Promise<readonly FailureRate[]> {
  throw new Error("failureRates: under way");
}
