import { chosenPart } from "./chosen-part.ts";
import type { ShelfRow } from "./chosen-part.ts";
import { leadTime } from "./lead-time.ts";
import type { Delivery } from "./lead-time.ts";
import type { LeadTime, PartClass, RestockSettings } from "./restock-line.ts";

/** What holds for all groups. */
export interface Around {
  readonly settings: RestockSettings;
  /** Numbers that a newer one replaces. */
  readonly ended: ReadonlySet<string>;
  readonly deliveries: ReadonlyMap<string | null, readonly Delivery[]>;
}

/** What would be ordered of a group, how surely it has to be there, and how long its shelf has to last. */
export interface OrderTerms {
  readonly chosen: ShelfRow | null;
  readonly part_class: PartClass;
  readonly class_known: boolean;
  readonly target: number;
  readonly lead: LeadTime;
  readonly review_days: number;
}

/**
 * `A` where a job cannot be finished without the part, `C` where it only sits at places that never hold a job up, else `B`.
 * What the owner wrote counts before the list of positions.
 */
export function partClass(rows: readonly ShelfRow[]): { part_class: PartClass; class_known: boolean } {
  const known = rows.flatMap((row) => (row.essential === null ? [] : [row.essential])), listed = rows.flatMap((row) => row.criticality ?? []);
  if (known.includes(true)) return { part_class: "A", class_known: true };
  const worst = [...listed].sort()[0];
  if (known.length > 0) return { part_class: worst === "C" ? "C" : "B", class_known: true };
  return worst === "A" || worst === "B" || worst === "C" ? { part_class: worst, class_known: false } : { part_class: "B", class_known: false };
}

/** Delivery time of the part that would be ordered. */
export function leadOf(row: ShelfRow | null, { deliveries, settings }: Pick<Around, "deliveries" | "settings">): LeadTime {
  const quote = { lead_days: row?.lead_days ?? null, lead_days_sd: row?.lead_days_sd ?? null };
  return leadTime(row === null ? [] : deliveries.get(row.supplier) ?? [], quote, settings.lead_days);
}

/** The terms of a group from its catalogue rows. */
export function orderTerms(rows: readonly ShelfRow[], around: Around): OrderTerms {
  const chosen = chosenPart(rows, around.ended), kind = partClass(rows);
  return {
    chosen, ...kind, target: around.settings.targets[kind.part_class], lead: leadOf(chosen, around),
    review_days: chosen?.review_days ?? around.settings.review_days,
  };
}
