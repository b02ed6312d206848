import type { RuleChange } from "../rule-changes/rule-changes.ts";
import type { Route } from "../demand/routes.ts";
import type { UseBelief } from "./expected-demand.ts";
import type { JointOrder } from "./joint-order.ts";
import type { OrderMark } from "./order-marks.ts";

/** `A`: the job cannot be finished without it; `B`: it can, or nobody said; `C`: it can, and it only sits where nothing waits for it. */
export type PartClass = "A" | "B" | "C";

/** Chance of not running out before the next order arrives, by class of part. */
export interface RestockSettings {
  /** Day the advice is for, `YYYY-MM-DD`; nothing after it is used. */
  readonly as_of: string;
  /** Days between two orders where the supplier's own figure is missing. */
  readonly review_days: number;
  readonly targets: Readonly<Record<PartClass, number>>;
  /** Days to arrival where neither arrivals nor a quote are known. */
  readonly lead_days: number;
  /** Changes of habit the owner dated: use before them is of another kind. */
  readonly rule_changes: readonly RuleChange[];
  /** Orders the owner marked as sent or arrived. */
  readonly marks: readonly OrderMark[];
  /** Order value from which a supplier sends free of carriage, as the owner wrote it. */
  readonly free_from: Readonly<Record<string, number>>;
}

/** How long an order takes to arrive, and where that is known from. */
export interface LeadTime {
  readonly days: number;
  readonly sd: number;
  readonly source: "observed" | "quoted" | "assumed";
  /** Deliveries counted; those later than quoted as a share, null where no quote is known or there are under ten. */
  readonly arrivals: number;
  readonly late: number | null;
  readonly late_share: number | null;
  readonly quoted_days: number | null;
}

/**
 * Advice for one interchange group.
 *
 * `order`: buy `order_qty`; `enough`: nothing to buy; `refused`: cannot be planned as one line (assorted);
 * `cannot tell`: used, but the shelf count is unknown. Money is in the shop's currency, quantities are pieces.
 */
export interface RestockLine {
  readonly status: "order" | "enough" | "refused" | "cannot tell";
  readonly interchange: string;
  /** The number to order: the cheapest of the group that is not replaced by a newer one. */
  readonly part_no: string | null;
  readonly name: string | null;
  readonly family: string | null;
  readonly part_nos: readonly string[];
  readonly supplier: string | null;
  readonly part_class: PartClass;
  readonly class_known: boolean;
  readonly target: number;
  readonly on_hand: number | null;
  readonly on_order: number;
  /** What the parts list says of the number to order, before marked orders. */
  readonly listed: { readonly on_hand: number | null; readonly on_order: number | null };
  readonly on_order_from: "parts list" | "orders" | "nowhere";
  /** Pieces that open jobs wait for. */
  readonly waiting: number;
  /** Pieces used or wanted from `used_from` to `used_to`, both counted (`months` of records), and those of them wanted; no day while there is no use to tell. */
  readonly used: number;
  readonly wanted: number;
  readonly used_from: string | null;
  readonly used_to: string | null;
  readonly months: number;
  readonly demand_per_month: number;
  /** Upper 95 % limit of the monthly use; what is left to say where nothing was used. */
  readonly demand_per_month_high: number;
  /** Day about which its use became another; what lies before does not count. */
  readonly changed_on: string | null;
  /** How the use ahead is told, one way or two averaged, and on how many looks back that choice rests (0: too few). */
  readonly routes: readonly Route[];
  readonly looks: number;
  readonly lead: LeadTime;
  readonly review_days: number;
  readonly protection_days: number;
  readonly season_factor: number;
  /** What is known of its daily use; `season_factor` of the days ahead is not in it. */
  readonly belief: UseBelief;
  /** Expected pieces in the protection time, and the number not exceeded with 95 % chance. */
  readonly demand_mean: number | null;
  readonly demand_p95: number | null;
  /** Stock (shelf + on order − waiting) under which to order, and how far to fill it up. */
  readonly reorder_point: number | null;
  /** Chance that the reorder point lasts; null where nothing is kept. */
  readonly level_chance: number | null;
  readonly order_up_to: number | null;
  readonly order_qty: number | null;
  readonly pack_qty: number;
  readonly min_order_qty: number;
  readonly unit_cost: number | null;
  readonly cost: number | null;
  /** Years the shelf lasts at the present use; null where nothing was used or the shelf is unknown. */
  readonly cover_years: number | null;
  /** One sentence for the owner, with the numbers. */
  readonly reason: string;
  /** Further sentences: where a figure is assumed, or two sources disagree. */
  readonly notes: readonly string[];
}

/** What to order from one supplier now. */
export interface SupplierSheet {
  readonly supplier: string | null;
  readonly lines: readonly RestockLine[];
  /** Sum of the known costs; lines without a price are counted in `unpriced`. */
  readonly total: number;
  readonly unpriced: number;
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
  /** Null where the supplier's minimum is unknown. */
  readonly minimum_reached: boolean | null;
  readonly short_by: number | null;
  readonly lead: LeadTime;
  /** Whether to send it now, and with what else. */
  readonly joint: JointOrder;
}
