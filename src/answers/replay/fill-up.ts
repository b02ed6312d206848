import { roundedOrder } from "../../stats/order-quantity.ts";
import type { ReplayGroup } from "./world.ts";

/** Pieces of a group that are ordered or come in. */
export interface Goods { readonly group: number; readonly pieces: number }

/** A supplier's part that an order can be filled up with. */
export interface Filler {
  readonly group: number;
  readonly terms: ReplayGroup;
  /** Shelf and under way, less what jobs wait for, this order counted. */
  position: number;
  /** Pieces a day, above 0. */
  readonly use: number;
}

export const valueOf = (goods: readonly Goods[], groups: readonly ReplayGroup[]): number =>
  goods.reduce((sum, { group, pieces }) => sum + pieces * (groups[group] as ReplayGroup).unit_cost, 0);

/**
 * An order brought to the supplier's smallest value, pack by pack with what would run out next: what a bench does rather than
 * wait or pay a surcharge (common practice, no source). Stays under it where nothing else of the supplier's is used.
 */
export function filledUp(goods: readonly Goods[], smallest: number, fillers: readonly Filler[], groups: readonly ReplayGroup[]): Goods[] {
  const pieces = new Map(goods.map((one) => [one.group, one.pieces])), priced = fillers.filter(({ terms }) => terms.unit_cost > 0);
  const list = () => [...pieces].map(([group, count]) => ({ group, pieces: count }));
  for (let value = valueOf(goods, groups); value < smallest && priced.length > 0;) {
    const next = priced.reduce((low, one) => (one.position / one.use < low.position / low.use ? one : low)), had = pieces.get(next.group);
    const more = had === undefined ? roundedOrder(1, next.terms.pack_qty, next.terms.min_order_qty) : next.terms.pack_qty;
    pieces.set(next.group, (had ?? 0) + more);
    next.position += more;
    value += more * next.terms.unit_cost;
  }
  return list();
}
