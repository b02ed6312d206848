import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { count, number, share } from "../../ui/format.ts";

/** What a supplier says and what arrived. Days from order to arrival; null where unknown. */
export interface Delivery {
  readonly supplier: string;
  readonly quoted_days: number | null;
  readonly arrivals: number;
  /** Mean of what arrived; null while too few arrived to go by. */
  readonly observed_days: number | null;
  /** About two orders in three lie between these. */
  readonly low_days: number | null;
  readonly high_days: number | null;
  readonly late: number | null;
}

/** Each supplier of the table once, by name. Lines without a supplier say nothing of deliveries. */
export function deliveries(lines: readonly RestockLine[]): readonly Delivery[] {
  const by_supplier = new Map<string, Delivery>();
  for (const { supplier, lead } of lines) {
    if (supplier === null || by_supplier.has(supplier)) continue;
    const seen = lead.source === "observed";
    by_supplier.set(supplier, {
      supplier,
      quoted_days: lead.quoted_days,
      arrivals: lead.arrivals,
      observed_days: seen ? lead.days : null,
      low_days: seen ? Math.max(0, lead.days - lead.sd) : null,
      high_days: seen ? lead.days + lead.sd : null,
      late: lead.late,
    });
  }
  return [...by_supplier.values()].sort((a, b) => a.supplier.localeCompare(b.supplier));
}

/** One sentence: what was quoted, what came, how often later than quoted. */
export function deliverySentence(one: Delivery, locale?: string): string {
  const quoted = one.quoted_days === null ? "quotes no days" : `quotes ${count(one.quoted_days, "day", "days", locale)}`;
  if (one.observed_days === null) return `${one.supplier} ${quoted}; too few of your orders have arrived to check that (${number(one.arrivals, 0, locale)}).`;
  const took = `your orders took ${number(one.observed_days, 0, locale)} on average`;
  const late = one.late === null ? "" : `, ${share(one.late, one.arrivals, locale)} came later than quoted`;
  return `${one.supplier} ${quoted}; ${took}${late}.`;
}
