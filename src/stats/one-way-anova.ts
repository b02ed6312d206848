import betainc from "@stdlib/math-base-special-betainc";
import { groupSquares } from "./group-squares.ts";
import { requireFinite, requireSome } from "./requirement.ts";

export interface OneWayAnova {
  between: { squares: number; degrees: number };
  within: { squares: number; degrees: number };
  f: number;
  p: number;
  rSquared: number;
  residualSd: number;
  /** Group size that a balanced table with the same information would have. */
  meanSize: number;
  /** Variance between groups by the method of moments; never below 0. */
  betweenVariance: number;
}

/** Why groups cannot be compared. */
export interface NoAnova { reason: "one group" | "one value in every group" | "no spread within groups" }

/**
 * Whether groups differ more than their members do.
 *
 * One-way analysis of variance (Searle, Casella & McCulloch 1992, Variance Components), accurate also for values that are
 * large beside their spread.
 *
 * @param groups values by group
 * @throws {RangeError} if there is no group, a group is empty or a value is not a finite number
 * @example
 * oneWayAnova([[1, 2, 3], [4, 5, 6]]).f; // => 13.5
 * oneWayAnova([[1, 2, 3]]); // => { reason: "one group" }
 */
export function oneWayAnova(groups: readonly (readonly number[])[]): OneWayAnova | NoAnova {
  requireSome("oneWayAnova", "groups", groups);
  groups.forEach((group) => { requireSome("oneWayAnova", "group", group); requireFinite("oneWayAnova", "group", group); });
  const n = groups.reduce((sum, group) => sum + group.length, 0), degrees = groups.length - 1, inside = n - groups.length;
  if (degrees === 0) return { reason: "one group" };
  if (inside === 0) return { reason: "one value in every group" };
  const { within, between } = groupSquares(groups);
  if (within === 0) return { reason: "no spread within groups" };
  const f = between / degrees / (within / inside);
  const meanSize = (n - groups.reduce((sum, group) => sum + group.length ** 2, 0) / n) / degrees;
  return {
    between: { squares: between, degrees }, within: { squares: within, degrees: inside }, f,
    p: betainc(inside / (inside + degrees * f), inside / 2, degrees / 2),
    rSquared: between / (between + within), residualSd: Math.sqrt(within / inside), meanSize,
    betweenVariance: Math.max(0, (between / degrees - within / inside) / meanSize),
  };
}
