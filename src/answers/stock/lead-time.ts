import { mean, sampleStandardDeviation } from "simple-statistics";
import type { LeadTime } from "./restock-line.ts";

/** One delivery: all lines of one order that arrived on one day. */
export interface Delivery {
  readonly days: number;
  readonly quoted_days: number | null;
}

export interface Quote {
  readonly lead_days: number | null;
  readonly lead_days_sd: number | null;
}

/** Below this many deliveries the supplier's own words are used. */
export const ENOUGH_DELIVERIES = 5;
/** No share is printed under ten. */
const ENOUGH_FOR_SHARE = 10;
/** Spread of the delivery time, as a part of it, where nobody wrote one: our own assumption. */
const ASSUMED_SPREAD = 1 / 3;

function late(deliveries: readonly Delivery[]): { late: number | null; late_share: number | null } {
  const quoted = deliveries.filter((delivery) => delivery.quoted_days !== null);
  if (quoted.length === 0) return { late: null, late_share: null };
  const count = quoted.filter((delivery) => delivery.days > (delivery.quoted_days ?? Infinity)).length;
  return { late: count, late_share: quoted.length < ENOUGH_FOR_SHARE ? null : count / quoted.length };
}

/**
 * Days a delivery takes and how much that varies: as observed from five deliveries on, else as quoted, else `fallback`.
 */
export function leadTime(deliveries: readonly Delivery[], quote: Quote, fallback: number): LeadTime {
  const days = deliveries.map((delivery) => delivery.days);
  const known = { arrivals: days.length, quoted_days: quote.lead_days, ...late(deliveries) };
  if (days.length >= ENOUGH_DELIVERIES) return { ...known, days: mean(days), sd: sampleStandardDeviation(days), source: "observed" };
  const said = quote.lead_days ?? fallback;
  return { ...known, days: said, sd: quote.lead_days_sd ?? said * ASSUMED_SPREAD, source: quote.lead_days === null ? "assumed" : "quoted" };
}
