import { groupSquares } from "./group-squares.ts";
import { maximumBetween } from "./maximum-between.ts";
import { requireFinite, requireSome } from "./requirement.ts";

export interface PooledGroup {
  n: number;
  /** Mean of the group's own values. */
  own: number;
  /** The same, pulled toward the common mean by as much as its few values deserve. */
  pooled: number;
  /** Standard error of the pooled mean, the doubts about the common mean and about the pull included. */
  se: number;
  /** Weight of the group's own mean in the pooled one. */
  weight: number;
}

export interface PooledGroups {
  /** `fitted`, or why the groups were pooled otherwise. */
  status: "fitted" | "no difference between groups" | "few groups, fixed prior";
  common: number;
  commonSe: number;
  between: number;
  within: number;
  logLikelihood: number;
  groups: PooledGroup[];
}

/** Why nothing can be pooled. */
export interface NoPooling { reason: "one value in every group" | "no spread within groups" }

export type Likelihood = "restricted" | "full";

const FEWEST_GROUPS = 5;
/** With few groups the variance between them is taken as this part of the variance within: four values outweigh the rest. */
const FIXED_RATIO = 0.25;

/** Standard deviations between groups, as parts of the one within, over which the standard errors are averaged. */
const RATIOS = Array.from({ length: 24 }, (_, i) => ((i + 0.5) / 12) ** 2);

interface Sizes { sizes: number[]; means: number[]; within: number; total: number }

/** Everything that follows once the ratio of the variances, between over within, is chosen. */
function atRatio({ sizes, means, within, total }: Sizes, ratio: number, likelihood: Likelihood) {
  const weights = sizes.map((n) => n / (1 + n * ratio)), weight = weights.reduce((sum, value) => sum + value, 0);
  const common = weights.reduce((sum, value, i) => sum + value * (means[i] as number), 0) / weight;
  const squares = weights.reduce((sum, value, i) => sum + value * ((means[i] as number) - common) ** 2, within);
  const degrees = likelihood === "restricted" ? total - 1 : total, variance = squares / degrees;
  const spread = sizes.reduce((sum, n) => sum + Math.log1p(n * ratio), 0);
  const logLikelihood = -0.5 * (degrees * (Math.log(2 * Math.PI * variance) + 1) + spread + (likelihood === "restricted" ? Math.log(weight) : 0));
  return { common, variance, logLikelihood, commonSe: Math.sqrt(variance / weight) };
}

/** Each group's mean and squared standard error at one ratio of the variances. */
function groupsAt(data: Sizes, ratio: number, likelihood: Likelihood) {
  const { common, variance, logLikelihood, commonSe } = atRatio(data, ratio, likelihood);
  return {
    logLikelihood,
    groups: data.sizes.map((n, i) => {
      const weight = (n * ratio) / (1 + n * ratio), own = data.means[i] as number;
      return { weight, mean: common + weight * (own - common), square: ratio * variance * (1 - weight) + ((1 - weight) * commonSe) ** 2 };
    }),
  };
}

/**
 * Squared distance to be expected between each group's pooled mean and its true one, averaged over the ratios by their
 * likelihood (flat prior on the standard deviation: Gelman 2006, Bayesian Analysis 1:515-534). The error at the best ratio
 * alone would be too small, most of all where that ratio is 0.
 */
function averagedSquares(data: Sizes, pooled: readonly number[]): number[] {
  const all = RATIOS.map((ratio) => groupsAt(data, ratio, "restricted")), best = Math.max(...all.map((one) => one.logLikelihood));
  const weights = all.map((one) => Math.exp(one.logLikelihood - best)), total = weights.reduce((sum, weight) => sum + weight, 0);
  return pooled.map((mean, i) => all.reduce((sum, { groups }, j) => {
    const group = groups[i] as (typeof groups)[number];
    return sum + (weights[j] as number) * (group.square + (group.mean - mean) ** 2);
  }, 0) / total);
}

/**
 * Means of groups, thin ones pulled toward the common mean.
 *
 * Random-effects model y = common + group + rest with normal parts, variances by restricted (or full) maximum likelihood,
 * group means by best linear unbiased prediction (Searle, Casella & McCulloch 1992, Variance Components; Robinson 1991,
 * Statistical Science 6:15-51). Real records often show no variance between groups: then every group has the common mean
 * and the status says so. Under five groups the variance between them is fixed at a quarter of the variance within.
 * For times, give logarithms.
 *
 * @param groups values by group
 * @throws {RangeError} if there is no group, a group is empty or a value is not a finite number
 * @example
 * pooledGroups([[1, 2], [2, 1], [1, 2], [2, 1], [2, 1]]).status; // => "no difference between groups"
 * pooledGroups([[1], [2]]); // => { reason: "one value in every group" }
 */
export function pooledGroups(groups: readonly (readonly number[])[], likelihood: Likelihood = "restricted"): PooledGroups | NoPooling {
  requireSome("pooledGroups", "groups", groups);
  groups.forEach((group) => { requireSome("pooledGroups", "group", group); requireFinite("pooledGroups", "group", group); });
  const { first, means, within } = groupSquares(groups), sizes = groups.map((group) => group.length);
  const data = { sizes, means, within, total: sizes.reduce((sum, n) => sum + n, 0) };
  if (data.total === groups.length) return { reason: "one value in every group" };
  if (within === 0) return { reason: "no spread within groups" };
  const few = groups.length < FEWEST_GROUPS;
  // Ratios from 0 to infinity are searched as their share ratio / (1 + ratio), which lies in 0…1.
  const top = few ? null : maximumBetween((share) => atRatio(data, share / (1 - share), likelihood).logLikelihood, 0, 1 - 1e-9);
  const none = top !== null && (top.at < 1e-7 || top.value <= atRatio(data, 0, likelihood).logLikelihood + 1e-9);
  const ratio = top === null ? FIXED_RATIO : none ? 0 : top.at / (1 - top.at);
  const { common, variance, logLikelihood, commonSe } = atRatio(data, ratio, likelihood);
  const { groups: pulled } = groupsAt(data, ratio, likelihood);
  const squares = few ? pulled.map((group) => group.square) : averagedSquares(data, pulled.map((group) => group.mean));
  return {
    status: few ? "few groups, fixed prior" : none ? "no difference between groups" : "fitted",
    common: first + common, commonSe, between: ratio * variance, within: variance, logLikelihood,
    groups: pulled.map(({ weight, mean }, i) => ({
      n: sizes[i] as number, own: first + (means[i] as number), weight, pooled: first + mean, se: Math.sqrt(squares[i] as number),
    })),
  };
}
