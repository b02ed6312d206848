import type { LotShare, LotRow, Lots } from "../answers/lots/lot.ts";
import type { ReportTable } from "./table.ts";

const COLUMNS = [
  "size_or_part", "supplier", "from", "to", "fitted", "failed_early", "share", "expected_share", "p_value", "verdict", "q_value", "still_carried",
  "began_earliest", "began_latest", "ended_earliest", "ended_latest", "lots_written", "models", "technicians", "shops", "reasons", "note",
];

const list = (shares: readonly LotShare[]) => shares.map(({ name, fitted, failed_early }) => `${name} ${failed_early} of ${fitted}`).join(";");

/** A lot of one shop, or of several: then with shops and without technicians. */
export type TableLot = Omit<LotRow, "carriers"> & { readonly still_carried: number; readonly shops: readonly LotShare[] };

function row({ lots_written, models, technicians, shops, reasons, began, ended, ...lot }: TableLot) {
  return {
    ...lot, began_earliest: began?.earliest ?? null, began_latest: began?.latest ?? null,
    ended_earliest: ended?.earliest ?? null, ended_latest: ended?.latest ?? null, lots_written: lots_written.join(";"), models: list(models), technicians: list(technicians), shops: list(shops), reasons: reasons.join(" "),
    note: lot.p_value === null ? "too few fittings looked at again to look for a window" : "",
  };
}

/** The worst months of fitting of every size (or part) and supplier. */
export const lotTableOf = (rows: readonly TableLot[]): ReportTable => ({ file: "lots.csv", columns: COLUMNS, rows: rows.map(row) });

/** The same of one shop. */
export const lotTable = ({ rows }: Lots): ReportTable => lotTableOf(rows.map(({ carriers, ...lot }) => ({ ...lot, still_carried: carriers.length, shops: [] })));
