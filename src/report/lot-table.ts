import type { LotRow, LotShare, Lots } from "../answers/lots/lot.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "size_or_part", "supplier", "from", "to", "fitted", "failed_early", "share", "expected_share", "p_value", "verdict", "q_value", "still_carried",
  "began_earliest", "began_latest", "ended_earliest", "ended_latest", "lots_written", "models", "technicians", "reasons", "note",
];

const list = (shares: readonly LotShare[]) => shares.map(({ name, fitted, failed_early }) => `${name} ${failed_early} of ${fitted}`).join(";");

function row({ carriers, lots_written, models, technicians, reasons, began, ended, ...lot }: LotRow) {
  return {
    ...lot, still_carried: carriers.length, began_earliest: began?.earliest ?? null, began_latest: began?.latest ?? null,
    ended_earliest: ended?.earliest ?? null, ended_latest: ended?.latest ?? null, lots_written: lots_written.join(";"), models: list(models), technicians: list(technicians), reasons: reasons.join(" "),
    note: lot.p_value === null ? "too few fittings looked at again to look for a window" : "",
  };
}

/** The worst months of fitting of every size (or part) and supplier. */
export function lotTable({ rows }: Lots): ReportTable {
  return { file: "lots.csv", columns: COLUMNS, rows: rows.map(row) };
}
