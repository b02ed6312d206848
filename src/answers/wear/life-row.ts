import { knownShapeLife } from "../../stats/known-shape-life.ts";
import { lifeAt, shapeOf } from "../../stats/life-figures.ts";
import { hasCurve, weibullLife, WEAK_PRIOR } from "../../stats/weibull-life.ts";
import type { WeibullLife } from "../../stats/weibull-life.ts";
import type { LifePrior } from "../../stats/weibull-likelihood.ts";
import { failedOf, goodOf, lifeLinesOf, longestOf, partsOf, telling } from "./life-lines-of.ts";
import type { PlaceName, WearLine } from "./wear-records.ts";
import type { Clock, Life, Limits, WearRow, Wears, WearStatus } from "./wear.ts";
import { counted, FEWEST, statusText, wearsText } from "./wear-words.ts";

export const NO_LIMITS: Limits = { value: null, low: null, high: null };
const NO_LIFE = (share: number): Life => ({ ...NO_LIMITS, share, beyond: false });
/** Share failed at the Weibull scale. */
const AT_SCALE = -Math.expm1(-1);
const USUAL_SHAPE = WEAK_PRIOR.shape?.median ?? 1.5;

/** Keeps a life inside the records: over the longest exposure seen nothing is claimed but that it lies over what is known. */
export function insideRecords(share: number, { value, low, high }: Limits, longest: number | null): Life {
  const kept = (one: number | null) => (one !== null && longest !== null && one <= longest ? one : null), beyond = value !== null && kept(value) === null;
  return { share, value: kept(value), low: kept(low), high: kept(high), beyond };
}

/** Exposure by which a share has failed, inside the records. */
export const lifeInside = (fit: WeibullLife, share: number, longest: number | null, x: readonly number[] = []): Life => insideRecords(share, lifeAt(fit, share, x), longest);

/** A fit of these parts, or why there is none; without a prior unless the failures are separated or one is asked for. */
export function fitOf(lines: readonly WearLine[], prior: LifePrior = {}): { status: WearStatus; fit: WeibullLife | null } {
  const some = telling(lines);
  if (some.length === 0) return { status: "no exposure", fit: null };
  const failed = failedOf(some), good = goodOf(some);
  if (failed === 0 || good === 0) return { status: failed === 0 ? "none failed" : "all failed", fit: null };
  if (failed < FEWEST) return { status: "too few failures", fit: null };
  if (good < FEWEST) return { status: "too few good", fit: null };
  const fit = weibullLife(lifeLinesOf(some), { prior });
  return { status: fit.status, fit: "theta" in fit ? fit : null };
}

/** B10 as far as the records bound it where the shape cannot be seen, with the usual shape. */
function boundOf(lines: readonly WearLine[]): Limits {
  const some = telling(lines);
  if (some.length === 0) return NO_LIMITS;
  const { low, high } = knownShapeLife(lifeLinesOf(some), USUAL_SHAPE), factor = (-Math.log1p(-0.1)) ** (1 / USUAL_SHAPE);
  return { value: null, low: low === null ? null : low * factor, high: high === null ? null : high * factor };
}

function noteOf(status: WearStatus, { left, unlinked }: { left: Record<string, number>; unlinked: number }): string {
  const { fault = 0, exposure = 0, missing = 0 } = left;
  return [
    status === "separated" ? "shape with a weak prior (median 1.5) because the failures are separated" : "",
    unlinked > 0 ? `${counted(unlinked, "inspection")} without serial or tag stand alone` : "",
    fault > 0 ? `${counted(fault, "part")} first looked at on a reel that came in with something wrong left out` : "",
    exposure > 0 ? `${counted(exposure, "failure")} without any exposure left out` : "",
    missing > 0 ? `${counted(missing, "part")} left out: exposure not written` : "",
  ].filter((part) => part !== "").join("; ");
}

const EMPTY = { shape: NO_LIMITS, shape_se: null, scale: NO_LIMITS, b10: NO_LIFE(0.1), b20: NO_LIFE(0.2), b50: NO_LIFE(0.5), log_likelihood: null };

function figures(fit: WeibullLife, longest: number | null) {
  if (!hasCurve(fit)) return { ...EMPTY, shape: { ...NO_LIMITS, value: fit.shape }, shape_se: fit.shape_se, log_likelihood: fit.logLikelihood };
  return {
    shape: shapeOf(fit), shape_se: fit.shape_se, scale: lifeAt(fit, AT_SCALE), log_likelihood: fit.logLikelihood,
    b10: lifeInside(fit, 0.1, longest), b20: lifeInside(fit, 0.2, longest), b50: lifeInside(fit, 0.5, longest),
  };
}

/** Wear shows as a shape over 1. */
function wearsOf(fit: WeibullLife | null, { value, high }: Limits): Wears | null {
  if (!fit || value === null) return null;
  return value >= 1 ? "yes" : !hasCurve(fit) || (high !== null && high < 1) ? "no" : "not plain";
}

export interface RowMeans { readonly place: PlaceName; readonly clock: Clock; readonly group?: string; readonly prior?: LifePrior }

/** One position, or one level of a condition of it, with everything that can be said of its life. */
export function lifeRow(lines: readonly WearLine[], { place, clock, group = "*", prior }: RowMeans): { row: WearRow; fit: WeibullLife | null } {
  const some = telling(lines), { status, fit } = fitOf(lines, prior), longest = longestOf(lines), n = partsOf(some);
  const linked = some.reduce((sum, one) => sum + one.linked, 0), unlinked = n - linked, of = (why: WearLine["left_out"]) => partsOf(lines.filter(({ left_out }) => left_out === why));
  const left = { fault: of("chosen by fault"), exposure: of("no exposure"), missing: of("clock missing") }, found = fit ? figures(fit, longest) : EMPTY;
  const wears = wearsOf(fit, found.shape), status_text = [statusText(status), fit && hasCurve(fit) ? wearsText(wears, clock) : ""].filter((part) => part !== "").join(" ");
  const followed = some.some(({ low, high }) => low > 0 && high !== null);
  return {
    fit,
    row: {
      position: place.position, position_name: place.name, group_code: place.group_code, group_name: place.group_name, clock, group,
      method: followed ? "spells" : "current status", n, failed: failedOf(some), unlinked, status, status_text, wears, ...found,
      b10_bound: fit ? NO_LIMITS : boundOf(lines), longest, failed_without_exposure: left.exposure, clock_missing: left.missing, chosen_by_fault: left.fault,
      note: [status_text, noteOf(status, { left, unlinked })].filter((part) => part !== "").join(" "),
    },
  };
}
