import { requireNonNegative, requirePositive } from "./requirement.ts";

/** What ordering costs: `perYear` in units, `orderCost` per order and `holdingCost` per unit and year in money. */
export interface OrderCosts { perYear: number; orderCost: number; holdingCost: number }

export interface OrderQuantity {
  /** Quantity with the least yearly cost, as if any fraction could be bought. */
  economic: number;
  economicCost: number;
  /** The cheaper of the two neighbouring multiples of the pack, at least one pack. */
  inPacks: number;
  inPacksCost: number;
  /** Orders a year; null without demand. */
  ordersPerYear: number | null;
}

/**
 * Quantity to order at a time, so that ordering and holding together cost least; 0 without demand.
 *
 * Cost a year = order cost × demand / quantity + holding cost × quantity / 2 (Harris 1913, Factory 10:135-136, 152).
 *
 * @param pack units in a pack
 * @throws {RangeError} if demand is negative, or a cost or the pack not above 0
 * @example
 * orderQuantity({ perYear: 120, orderCost: 12, holdingCost: 0.3 }, 10).economic; // => 97.9796
 * orderQuantity({ perYear: 120, orderCost: 12, holdingCost: 0.3 }, 10).inPacks; // => 100
 */
export function orderQuantity(costs: OrderCosts, pack = 1): OrderQuantity {
  const { perYear, orderCost, holdingCost } = costs;
  requireNonNegative("orderQuantity", "perYear", perYear);
  requirePositive("orderQuantity", "orderCost", orderCost);
  requirePositive("orderQuantity", "holdingCost", holdingCost);
  requirePositive("orderQuantity", "pack", pack);
  if (perYear === 0) return { economic: 0, economicCost: 0, inPacks: 0, inPacksCost: 0, ordersPerYear: null };
  const cost = (quantity: number) => (orderCost * perYear) / quantity + (holdingCost * quantity) / 2;
  const economic = Math.sqrt((2 * orderCost * perYear) / holdingCost);
  const fewer = Math.max(1, Math.floor(economic / pack)) * pack, more = Math.max(1, Math.ceil(economic / pack)) * pack;
  const inPacks = cost(fewer) <= cost(more) ? fewer : more;
  return { economic, economicCost: cost(economic), inPacks, inPacksCost: cost(inPacks), ordersPerYear: perYear / inPacks };
}

/**
 * What to buy when `needed` is missing: nothing, or at least the supplier's minimum, in full packs.
 *
 * @param needed may be negative when there is enough
 * @throws {RangeError} if `pack` is not above 0 or `minimum` negative
 * @example
 * roundedOrder(7, 5, 5); // => 10
 * roundedOrder(1, 10, 20); // => 20
 * roundedOrder(-3, 5, 5); // => 0
 */
export function roundedOrder(needed: number, pack: number, minimum = 0): number {
  requirePositive("roundedOrder", "pack", pack);
  requireNonNegative("roundedOrder", "minimum", minimum);
  if (Number.isNaN(needed)) throw new RangeError("roundedOrder: needed must be a number, got NaN");
  if (needed <= 0) return 0;
  // A sum of fractions such as 0.1 × 3 must not buy one pack more than it means.
  return Math.ceil(Math.max(needed, minimum) / pack - 1e-9) * pack;
}
