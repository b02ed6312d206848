import { mean as meanOf } from "simple-statistics";

export interface GroupSquares {
  /** Taken off every value before anything else, so that large values keep their digits; add it to the means below. */
  first: number;
  /** Mean of each group, and of all values. */
  means: number[];
  all: number;
  /** Sum of squares around the group means, and of the group means around the common one. */
  within: number;
  between: number;
}

/**
 * Group means and the two sums of squares that variance comparisons are made of, in two passes.
 *
 * @param groups values by group, none empty
 * @example
 * groupSquares([[1, 2, 3], [4, 5, 6]]); // => { first: 1, means: [1, 4], all: 2.5, within: 4, between: 13.5 }
 */
export function groupSquares(groups: readonly (readonly number[])[]): GroupSquares {
  const first = groups[0]?.[0] ?? 0;
  const small = groups.map((group) => group.map((value) => value - first)), means = small.map(meanOf), all = meanOf(small.flat());
  return {
    first, means, all,
    within: small.reduce((sum, group, i) => group.reduce((part, value) => part + (value - (means[i] as number)) ** 2, sum), 0),
    between: small.reduce((sum, group, i) => sum + group.length * ((means[i] as number) - all) ** 2, 0),
  };
}
