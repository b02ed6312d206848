import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { packLines } from "./life-lines.ts";
import type { LifeLine, PackedLines } from "./life-lines.ts";
import { maximumBetween } from "./maximum-between.ts";
import { requireInside, requirePositive } from "./requirement.ts";
import { rootBetween } from "./root-between.ts";
import { weibullLikelihood } from "./weibull-likelihood.ts";

/** Weibull scale when the shape is taken as known. Without failures only `low` is there, without good parts only `high`. */
export interface KnownShapeLife {
  readonly status: "ok" | "none failed" | "all failed";
  readonly scale: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly logLikelihood: number | null;
}

/** Logarithms of the scale, over the unit, that are worth looking at. */
const WIDE = 40;

function mixed(packed: PackedLines, shape: number, level: number): KnownShapeLife {
  const f = (log: number) => weibullLikelihood(packed, [-shape * log, shape, ...Array.from({ length: packed.covariates }, () => 0)]).value;
  const reach = WIDE / shape, best = maximumBetween(f, -reach, reach, 200), z = normalQuantile((1 + level) / 2, 0, 1);
  const fallen = (log: number) => Math.max(-1e6, f(log)) - best.value + z ** 2 / 2, back = (log: number) => packed.unit * Math.exp(log);
  return { status: "ok", scale: back(best.at), low: back(rootBetween(fallen, -reach, best.at, 1e-13)), high: back(rootBetween(fallen, best.at, reach, 1e-13)), logLikelihood: best.value };
}

/**
 * How long parts last when there are too few failures to see the shape: scale of a Weibull life whose shape is given (Nelson 1985,
 * Journal of Quality Technology 17:140-146). With no failure an exact one-sided lower limit, with no part seen good an upper one, else
 * limits by likelihood ratio. A share p has failed by scale · (−ln(1 − p))^(1/shape).
 *
 * @throws {RangeError} unless `shape` is above 0, or on a line that cannot be (`packLines`)
 * @example
 * knownShapeLife([{ low: 10, high: Infinity, count: 6 }, { low: 20, high: Infinity, count: 5 }, { low: 45, high: Infinity, count: 2 }], 2).low; // => 47.1150
 */
export function knownShapeLife(lines: readonly LifeLine[], shape: number, level = 0.95): KnownShapeLife {
  requirePositive("knownShapeLife", "shape", shape);
  requireInside("knownShapeLife", "level", level);
  const packed = packLines(lines), none = { scale: null, low: null, high: null, logLikelihood: null };
  if (lines.every(({ high }) => high === Infinity)) {
    const lived = lines.reduce((sum, { low, entry = 0, count = 1 }) => sum + count * (low ** shape - entry ** shape), 0);
    return { ...none, status: "none failed", low: (lived / -Math.log(1 - level)) ** (1 / shape) };
  }
  if (!lines.every(({ low }) => low === 0)) return mixed(packed, shape, level);
  const likely = (log: number) => Math.max(-1e6, weibullLikelihood(packed, [-shape * log, shape, ...Array.from({ length: packed.covariates }, () => 0)]).value) - Math.log(1 - level);
  return { ...none, status: "all failed", high: packed.unit * Math.exp(rootBetween(likely, -WIDE / shape, WIDE / shape, 1e-13)) };
}
