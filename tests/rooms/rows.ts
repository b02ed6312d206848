import type { FailurePeriod, FailureRate } from "../../src/answers/failures/failure-rate.ts";
import type { Verdict, VerdictSide } from "../../src/answers/failures/verdict.ts";
import type { LabourRow } from "../../src/answers/labour/labour.ts";
import type { LeadTime, RestockLine, SupplierSheet } from "../../src/answers/stock/restock-line.ts";
import { shareInterval } from "../../src/stats/share-interval.ts";

/** A row of the failure table for `failed` of `inspected`; under ten inspected it has no share, as in the answer. */
export function rate(failed: number, inspected: number, rest: Partial<FailureRate> = {}): FailureRate {
  const [low, high] = inspected < 10 ? [null, null] : shareInterval(failed, inspected);
  return {
    position: "ar_clutch", position_name: "One-way clutch", group_code: "AR", group_name: "Anti-reverse", family: "one-way clutch",
    maker: "Brackhelm", model: "Whinbeck 40", reel_kind: "spinning", opening: "planned", denominator: "coverage",
    inspected, failed, rate: inspected < 10 ? null : failed / inspected, rate_low: low, rate_high: high,
    pooled_rate: null, pooled_low: null, pooled_high: null, p_value: null, q_value: null,
    replaced: failed, replaced_routine: 0, outside: 0, outside_failed: 0, note: "", ...rest,
  };
}

const NOTHING = { value: null, low: null, high: null };

/** One way of coming in: `failed` of `inspected` beside the others; nothing is worked out. */
export function side(failed: number, inspected: number, others: readonly [failed: number, inspected: number], rest: Partial<VerdictSide> = {}): VerdictSide {
  const { rate: value, rate_low: low, rate_high: high } = rate(failed, inspected);
  return {
    opening: "planned", inspected, failed, rate: { value, low, high }, pooled: NOTHING, others_inspected: others[1], others_failed: others[0], others_models: 9, others_share: others[0] / others[1], widened: 1,
    shrunken_ratio: NOTHING, adjusted: { value: 5.06, low: 2.8, high: 9.04 }, compared: inspected, expected: 6.4, seen_over_expected: NOTHING, own_level: 0.8,
    beyond_own: NOTHING, p_value: 0.0001, q_value: 0.0004, beyond_q: 0.001, word: "stands out", ...rest,
  };
}

/** The clutch of one model, judged: 32 of 236 beside 34 of 1,239 in planned services. */
export function verdict(rest: Partial<Verdict> = {}): Verdict {
  const planned = side(32, 236, [34, 1239]);
  const sides = [{ ...side(95, 350, [94, 1604]), opening: "*" as const }, planned, { ...side(63, 114, [60, 365]), opening: "complaint" as const }];
  return {
    position: "ar_clutch", position_name: "One-way clutch", group_code: "AR", group_name: "Anti-reverse", family: "one-way clutch", maker: "Brackhelm", model: "Whinbeck 40",
    reel_kind: "spinning", series: false, models: ["Whinbeck 40"], denominator: "coverage", word: "stands out", decided_on: "planned", reasons: ["It fails clearly more often."],
    sides, left_out: [], widened: 1, seasons: [], seasons_agree: 0, seasons_told: 0, fault: null,
    cost: { minutes: 2338, parts: 1069.5, waiting_days: 97, comebacks: 3, minute_worth: 0.9, money: 3307 }, ...rest,
  };
}

/** A quarter of one position. */
export function quarter(period: string, failed: number, inspected: number, replaced_routine: number): FailurePeriod {
  const { opening, rate: share, rate_low, rate_high } = rate(failed, inspected);
  return {
    period, opening, inspected, failed, rate: share, rate_low, rate_high, replaced: failed, replaced_routine,
    replaced_share: share === null ? null : (failed + replaced_routine) / inspected,
  };
}

export const LEAD: LeadTime = { days: 34, sd: 14, source: "observed", arrivals: 22, late: 19, late_share: 19 / 22, quoted_days: 21 };

/** A line of the order table: a bearing of which eight are to be ordered. */
export const line = (rest: Partial<RestockLine> = {}): RestockLine => ({
  status: "order", interchange: "bearing 7x11x3", part_no: "FL-7113", name: "Bearing 7×11×3", family: "ball bearing",
  part_nos: ["FL-7113", "TT-7113"], supplier: "Far Lantern", part_class: "A", class_known: true, target: 0.95,
  on_hand: 2, on_order: 0, listed: { on_hand: 2, on_order: null }, on_order_from: "nowhere", waiting: 1, used: 144, wanted: 3, used_from: "2023-01-06", used_to: "2026-01-05", months: 36,
  demand_per_month: 4.1, demand_per_month_high: 5, changed_on: null, routes: ["steady"], looks: 0, belief: { shape: 144, rate: 1096, clump: 1, unevenness: 0.05 }, lead: LEAD, review_days: 14, protection_days: 48, season_factor: 1,
  demand_mean: 6.5, demand_p95: 11, reorder_point: 11, level_chance: 0.96, order_up_to: 13, order_qty: 12, pack_qty: 4, min_order_qty: 4,
  unit_cost: 1.5, cost: 18, cover_years: 0.04, reason: "Eleven may be used before the next order comes and two are on the shelf.", notes: [], ...rest,
});

export const supplierSheet = (lines: readonly RestockLine[], rest: Partial<SupplierSheet> = {}): SupplierSheet => ({
  supplier: "Far Lantern", lines, total: lines.reduce((sum, one) => sum + (one.cost ?? 0), 0), unpriced: 0, order_cost: 9,
  min_order_value: 60, minimum_reached: false, short_by: 42, lead: LEAD,
  joint: { decision: "send now", held_up: 0.4, fill: [], total: 18, next_on: "2026-01-06", sentence: "Send it now: waiting 14 days would hold up about 4 jobs in 10 such orders." }, ...rest,
});

/** Times of full services on spinning reels. */
export const job = (rest: Partial<LabourRow> = {}): LabourRow => ({
  job: "full service", reel_kind: "spinning", maker: "*", model: "*", n: 612, median: 67, mean: 71, mean_low: 69, mean_high: 73, p80: 86, p90: 98,
  pooled_median: 67, pooled_p80: 86, pooled_p90: 98, warranty: 11, in_batches: 40, blank: 3, typed_as_hours: 2, with_waiting: 1, note: "", ...rest,
});
