import type { OrderMark } from "../../answers/stock/order-marks.ts";
import { number } from "../../ui/format.ts";

/** What was done to the marks, and the lists before and after it, to go back. */
export interface MarksChanged {
  readonly words: string;
  readonly list: readonly OrderMark[];
  readonly after: readonly OrderMark[];
}

/** What was marked together: one supplier's lines sent on one day that came on one day, or are under way. */
export interface MarkedOrder {
  readonly key: string;
  readonly supplier: string;
  readonly ordered_on: string;
  readonly arrived_on: string | null;
  readonly marks: readonly OrderMark[];
  /** `10 × BRG-7x11x3, 2 × ARC-EK` */
  readonly words: string;
}

/** The marks as orders, those under way first, then the newest. */
export function markedOrders(marks: readonly OrderMark[]): MarkedOrder[] {
  const found = new Map<string, OrderMark[]>();
  for (const mark of marks) {
    const key = JSON.stringify([mark.supplier, mark.ordered_on, mark.arrived_on]);
    found.set(key, [...(found.get(key) ?? []), mark]);
  }
  return [...found].map(([key, some]) => {
    const { supplier, ordered_on, arrived_on } = some[0] as OrderMark;
    return { key, supplier: supplier ?? "no supplier named", ordered_on, arrived_on, marks: some, words: some.map((one) => `${number(one.qty)} × ${one.part_no}`).join(", ") };
  }).sort((a, b) => Number(a.arrived_on !== null) - Number(b.arrived_on !== null) || (a.ordered_on < b.ordered_on ? 1 : a.ordered_on > b.ordered_on ? -1 : a.key < b.key ? -1 : 1));
}
