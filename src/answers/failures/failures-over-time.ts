import type { Engine } from "../../db/engine.ts";
import type { FailureFilter, FailurePeriod } from "./failure-rate.ts";

/**
 * Failures and replacements of one position by month, quarter or half year, oldest first; periods without any inspection
 * within the records are there with zeros.
 */
export async function failuresOverTime(
  _engine: Engine,
  _filter: FailureFilter & { readonly position: string; readonly months: 1 | 3 | 6 },
  _signal?: AbortSignal,
): Promise<readonly FailurePeriod[]> {
  throw new Error("failuresOverTime: under way");
}
