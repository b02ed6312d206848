import { demandQuantile } from "../../stats/negative-binomial.ts";
import { leadTimeDemand } from "../../stats/lead-time-demand.ts";
import { roundedOrder } from "../../stats/order-quantity.ts";

export interface PlugInLine {
  readonly per_year: number;
  readonly season_factor: number;
  readonly lead_days: number;
  readonly lead_days_sd: number;
  readonly review_days: number;
  readonly target: number;
}

/**
 * The level to fill up to when the yearly use is taken as known: the plain rule a bench can follow by hand.
 *
 * Use over delivery and review time × season; variance = mean + (daily use × spread of the delivery time)²; the smallest
 * count that lasts with the target chance under a negative binomial with that mean and variance. Too low for parts with
 * few uses on record, which is why the advice itself uses the predictive demand (`expected-demand.ts`).
 *
 * @returns pieces expected in the protection time, and the level
 * @throws {RangeError} when a figure is negative, the protection time not above 0 or the target not inside 0…1
 */
export function plugInLevel(line: PlugInLine): { mean: number; level: number } {
  const { per_year, season_factor, lead_days, lead_days_sd, review_days, target } = line;
  const protection = lead_days + review_days;
  // The spread belongs to the delivery alone, so its share of the protection time carries it.
  const demand = leadTimeDemand((per_year * season_factor) / 365, { mean: protection, sd: lead_days_sd });
  return { mean: demand.mean, level: demandQuantile(target, demand) };
}

export interface ShelfPosition {
  readonly on_hand: number;
  readonly on_order: number;
  /** Pieces that open jobs wait for. */
  readonly waiting: number;
  readonly pack_qty: number;
  readonly min_order_qty: number;
}

/** Pieces to buy to reach `level`: nothing, or at least the smallest order in full packs. */
export function toBuy(level: number, shelf: ShelfPosition): number {
  const position = shelf.on_hand + shelf.on_order - shelf.waiting;
  return roundedOrder(level - position, shelf.pack_qty, shelf.min_order_qty);
}
