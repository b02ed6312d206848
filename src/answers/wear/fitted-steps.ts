import { hasCurve } from "../../stats/weibull-life.ts";
import { fittedAt, stepsOf } from "./curve.ts";
import { longestOf } from "./life-lines-of.ts";
import { fitOf } from "./life-row.ts";
import type { WearLine } from "./wear-records.ts";
import type { WearStatus } from "./wear.ts";

/** A step without a shape, and the curve at its exposure; null where there is no curve. */
export interface FittedStep {
  readonly exposure: number;
  readonly fitted: number | null;
  readonly fitted_low: number | null;
  readonly fitted_high: number | null;
  readonly observed: number;
  readonly n: number;
}

/** Steps evenly thinned, the last one kept. */
function thinned<Step>(steps: readonly Step[], most: number): Step[] {
  if (steps.length <= most) return [...steps];
  return Array.from({ length: most }, (_, i) => steps[Math.round((i * (steps.length - 1)) / (most - 1))] as Step);
}

/** The steps of a position with the curve beside them, at most so many. */
export function fittedSteps(lines: readonly WearLine[], most: number): { status: WearStatus; points: readonly FittedStep[] } {
  const { fit, status } = fitOf(lines), steps = thinned(stepsOf(lines), most), longest = longestOf(lines);
  const curve = fit && hasCurve(fit) && longest !== null ? fittedAt(fit, steps.map(({ exposure }) => exposure), longest) : [];
  return {
    status, points: steps.map((step, i) => ({ ...step, fitted: curve[i]?.fitted ?? null, fitted_low: curve[i]?.low ?? null, fitted_high: curve[i]?.high ?? null })),
  };
}
