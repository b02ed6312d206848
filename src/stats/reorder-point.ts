import { demandAbove, demandAtMost } from "./negative-binomial.ts";
import type { CountDistribution } from "./negative-binomial.ts";
import { requireInside, requireWhole } from "./requirement.ts";
import { expectedBackorders } from "./stock-level.ts";

export interface ReorderPoint {
  /** Order when on hand + on order − waiting falls to this; −1 means when somebody waits. */
  point: number;
  quantity: number;
  /** Share of parts handed over at once. */
  fillRate: number;
  backorders: number;
  onHand: number;
  /** Chance that the delivery comes in time: P(demand ≤ point). */
  readyRate: number;
}

/** A stock position below zero has everything of it waiting, and the mean demand on top. */
const waiting = (position: number, demand: CountDistribution): number =>
  position < 0 ? demand.mean - position : expectedBackorders(position, demand);

/**
 * What ordering `quantity` whenever the stock position falls to `point` does, parts going one at a time (Poisson).
 *
 * The position is then evenly spread over point + 1 … point + quantity (Hadley & Whitin 1963, Analysis of Inventory
 * Systems).
 *
 * @throws {RangeError} if `point` is not a whole number of at least −1 or `quantity` not one of at least 1
 * @example
 * reorderPoint(1, 3, { mean: 0.20547945, size: Infinity }).fillRate; // => 0.9934
 */
export function reorderPoint(point: number, quantity: number, demand: CountDistribution): ReorderPoint {
  requireWhole("reorderPoint", "point", point, -1);
  requireWhole("reorderPoint", "quantity", quantity, 1);
  let short = 0, backorders = 0;
  for (let position = point + 1; position <= point + quantity; position += 1) {
    short += demandAbove(position - 1, demand) / quantity;
    backorders += waiting(position, demand) / quantity;
  }
  const meanPosition = point + (quantity + 1) / 2;
  return {
    point, quantity, fillRate: 1 - short, backorders,
    onHand: meanPosition - demand.mean + backorders,
    readyRate: demandAtMost(point, demand),
  };
}

/**
 * Smallest reorder point with at least the share `target` of parts handed over at once, searched from −1 upwards.
 *
 * @throws {RangeError} if `target` is not inside 0…1 or `quantity` not a whole number of at least 1
 * @example
 * smallestReorderPoint(0.95, 3, { mean: 0.20547945, size: Infinity }).point; // => 1
 */
export function smallestReorderPoint(target: number, quantity: number, demand: CountDistribution): ReorderPoint {
  requireInside("smallestReorderPoint", "target", target);
  for (let point = -1; ; point += 1) {
    const result = reorderPoint(point, quantity, demand);
    if (result.fillRate >= target) return result;
  }
}
