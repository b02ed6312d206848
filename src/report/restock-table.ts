import type { Restock } from "../answers/stock/restock.ts";
import type { RestockLine } from "../answers/stock/restock-line.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "part_no", "interchange", "supplier", "on_hand", "on_order", "demand_mean", "demand_p95", "reorder_point", "order_up_to", "order_qty",
  "cost", "reason", "status", "name", "part_nos", "part_class", "target", "waiting", "used", "wanted", "months", "demand_per_month",
  "demand_per_month_high", "lead_days", "lead_days_sd", "lead_from", "deliveries", "quoted_days", "late", "review_days", "protection_days",
  "season_factor", "level_chance", "routes", "looks", "changed_on", "pieces_at_once", "pack_qty", "min_order_qty", "unit_cost", "cover_years", "note",
];

function row({ lead, notes, part_nos, routes, belief, listed, ...line }: RestockLine) {
  return {
    ...line, pieces_at_once: belief.clump, listed_on_hand: listed.on_hand, listed_on_order: listed.on_order, part_nos: part_nos.join(";"), routes: routes.join(";"), lead_days: lead.days, lead_days_sd: lead.sd, lead_from: lead.source, deliveries: lead.arrivals,
    quoted_days: lead.quoted_days, late: lead.late, note: notes.join(" "),
  };
}

/** The advice of the Stock room, one line an interchange group. */
export function restockTable({ lines }: Restock): ReportTable {
  return { file: "restock.csv", columns: COLUMNS, rows: lines.map(row) };
}
