import { funnelLimits } from "../../stats/funnel-limits.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import type { Funnel, FunnelLimit } from "./pages.ts";

/** Numbers of openings the limits are drawn through: close together where they curve. */
function steps(most: number): number[] {
  const list = Array.from({ length: 40 }, (_, i) => Math.round(5 * (Math.max(most, 10) / 5) ** (i / 39)));
  return [...new Set(list)];
}

function limits(most: number, common: number): FunnelLimit[] {
  if (!(common > 0 && common < 1)) return [];
  return steps(most).map((inspected) => {
    const [low95, high95] = funnelLimits(inspected, common, 0.95), [low998, high998] = funnelLimits(inspected, common, 0.998);
    return { inspected, low95, high95, low998, high998 };
  });
}

/**
 * Share against openings for all models of one part, with the limits that chance alone would keep around the common share.
 *
 * @param verdicts of one position and one denominator; series are left out, their sizes being there
 * @param opening planned openings where most models have enough of them
 * @throws {RangeError} if there is no verdict or they are of several positions
 */
export function funnel(verdicts: readonly Verdict[], opening: "planned" | "*"): Funnel {
  const [first] = verdicts, models = verdicts.filter((one) => !one.series);
  if (!first || verdicts.some((one) => one.position !== first.position)) throw new RangeError(`funnel: verdicts must be of one position, got ${verdicts.length} of several`);
  const points = models.flatMap((verdict) => {
    const { inspected, failed } = sideOf(verdict, opening), { maker, model, word } = verdict;
    return inspected === 0 ? [] : [{ maker, model, inspected, failed, share: failed / inspected, word }];
  });
  const sum = (name: "inspected" | "failed") => points.reduce((total, point) => total + point[name], 0), common = points.length === 0 ? 0 : sum("failed") / sum("inspected");
  const most = Math.max(0, ...points.map(({ inspected }) => inspected));
  return { position: first.position, position_name: first.position_name, opening, common, points, limits: limits(most, common) };
}
