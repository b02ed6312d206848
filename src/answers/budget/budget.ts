import type { PartClass } from "../stock/restock-line.ts";
import type { IntakeDay } from "../stock/order-advice.ts";
import type { Fared } from "./followed.ts";
import type { PackedRows } from "../../db/packed-rows.ts";
import type { JobPart } from "./past-jobs.ts";
import type { Rush } from "./rush.ts";

/** What is asked of a budget beside the money itself, which any answer is good for. */
export interface BudgetQuestion {
  /** Day the money is spent, `YYYY-MM-DD`; nothing after it is used. */
  readonly as_of: string;
  /** How long it must last: until what is ordered at the next order day arrives, or to the end of the busiest weeks. */
  readonly lasting: "next order" | "rush";
  /** Delivery times against those known; 1 as they are. */
  readonly lead_factor: number;
  /** Which missing part makes a job wait: any, or only one without which it cannot be finished. */
  readonly held_up_by: "any part" | "parts it cannot do without";
}

export const BUDGET_DEFAULTS = { lasting: "next order", lead_factor: 1, held_up_by: "any part" } as const satisfies Omit<BudgetQuestion, "as_of">;

/** A group that can be bought: price, packs, and the shelf it starts from (there and under way, less what open jobs wait for). */
export interface BudgetGroup {
  readonly interchange: string;
  readonly part_no: string;
  readonly name: string | null;
  readonly supplier: string | null;
  readonly part_class: PartClass;
  readonly unit_cost: number;
  readonly pack_qty: number;
  readonly min_order_qty: number;
  readonly position: number;
  readonly lead_days: number;
  readonly lead_sd: number;
  readonly review_days: number;
}

/** Lines the choice knows nothing of, so that no job waits for them in it. */
export interface LeftOut {
  readonly refused: number;
  readonly uncounted: number;
  readonly unpriced: number;
  readonly can_do_without: number;
}

/** What the answer is made from: plain rows, so that a worker can be sent them. */
export interface BudgetRecords {
  readonly question: BudgetQuestion;
  readonly groups: readonly BudgetGroup[];
  readonly left_out: LeftOut;
  readonly parts: PackedRows<JobPart>;
  readonly intake: readonly Pick<IntakeDay, "day" | "tickets">[];
}

/** One purchase: groups (by their place in `Budget.groups`) bought at once, because they help only together when they are several. */
export interface BudgetStep {
  readonly bought: readonly { readonly group: number; readonly pieces: number; readonly cost: number }[];
  /** Jobs of the time ahead that it spares the wait. */
  readonly jobs: number;
}

export interface Budget {
  readonly question: BudgetQuestion;
  readonly groups: readonly BudgetGroup[];
  readonly left_out: LeftOut;
  /** What to buy first, second, third …; the list for any money is the steps it pays for, from the first on. */
  readonly steps: readonly BudgetStep[];
  /** How jobs fare before any step and after each, on futures the choice did not know; empty where nothing is known of jobs. */
  readonly fared: readonly Fared[];
  /** Jobs of the time ahead that need one of `groups`, on average. */
  readonly jobs: number;
  /** Futures the choice was made on, and those it was checked on. */
  readonly scenarios: number;
  readonly checked_on: number;
  readonly years: number;
  readonly rush: Rush | null;
  /** First day ahead, and the last where one was asked for. */
  readonly from: string;
  readonly until: string | null;
  /** Sentences that hold for the whole answer. */
  readonly notes: readonly string[];
}
