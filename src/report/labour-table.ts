import type { LabourRow } from "../answers/labour/labour.ts";
import type { LabourOfShops } from "../answers/labour/usual-shop.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "job", "reel_kind", "maker", "model", "n", "median", "mean", "mean_low", "mean_high", "p80", "pooled_median", "pooled_p80",
  "p90", "pooled_p90", "warranty", "in_batches", "blank", "typed_as_hours", "with_waiting", "shops", "between_shops", "note",
];

/** Bench minutes by job and kind of reel, and by model where there are ten. */
export function labourTable({ rows }: { readonly rows: readonly (LabourRow | LabourOfShops)[] }): ReportTable {
  return { file: "labour.csv", columns: COLUMNS, rows: rows.map((row) => ({ shops: null, between_shops: null, ...row })) };
}
