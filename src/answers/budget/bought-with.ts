import { money } from "../wording.ts";
import type { Budget, BudgetGroup } from "./budget.ts";
import type { Fared } from "./followed.ts";

/** One line of what a budget buys. */
export interface BoughtLine {
  readonly group: BudgetGroup;
  readonly pieces: number;
  readonly cost: number;
  /** Jobs of the time ahead spared the wait; shared evenly among parts that help only together. */
  readonly jobs: number;
  /** Names of the groups it was chosen together with. */
  readonly with: readonly string[];
}

export interface Bought {
  readonly spend: number;
  /** Steps paid for. */
  readonly steps: number;
  readonly lines: readonly BoughtLine[];
  readonly fared: Fared;
  /** What the next step would cost on top; null when nothing more helps. */
  readonly next: number | null;
}

/** Hundredths that add up differently must not cost the owner a step. */
const HAIR = 1e-6;

/** Number of steps that can be paid for, from the first on. */
function paidFor({ fared }: Budget, budget: number): number {
  let low = 0, high = fared.length - 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((fared[middle]?.spend ?? Infinity) <= budget + HAIR) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * The list for so much money: the steps it pays for, added up by part, the part that spares most jobs the wait first.
 *
 * @returns null where there is no curve
 */
export function boughtWith(answer: Budget, budget: number): Bought | null {
  const steps = paidFor(answer, budget), fared = answer.fared[steps];
  if (!fared) return null;
  const lines = new Map<number, { pieces: number; cost: number; jobs: number; with: Set<number> }>();
  for (const { bought, jobs } of answer.steps.slice(0, steps)) {
    for (const { group, pieces, cost } of bought) {
      const line = lines.get(group) ?? { pieces: 0, cost: 0, jobs: 0, with: new Set<number>() };
      for (const other of bought) if (other.group !== group) line.with.add(other.group);
      lines.set(group, { ...line, pieces: line.pieces + pieces, cost: line.cost + cost, jobs: line.jobs + jobs / bought.length });
    }
  }
  const after = answer.fared[steps + 1];
  return {
    spend: money(fared.spend), steps, fared, next: after ? money(after.spend - fared.spend) : null,
    lines: [...lines].flatMap(([at, line]) => {
      const group = answer.groups[at];
      return group ? [{ ...line, group, cost: money(line.cost), with: [...line.with].flatMap((other) => answer.groups[other]?.interchange ?? []) }] : [];
    }).sort((a, b) => b.jobs - a.jobs || (a.group.interchange < b.group.interchange ? -1 : 1)),
  };
}

/** The least money for which at least this share of jobs does not wait; null where no money does. */
export function moneyFor(answer: Budget, share: number): number | null {
  return answer.fared.find(({ jobs_without_wait }) => jobs_without_wait >= share)?.spend ?? null;
}
