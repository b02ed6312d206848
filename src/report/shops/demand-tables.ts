import type { Engine } from "../../db/engine.ts";
import type { ReportTable } from "../table.ts";
import byShopSql from "./demand-by-shop.sql?raw";
import byMonthSql from "./pooled-demand.sql?raw";

type MonthRow = { readonly interchange: string; readonly name: string | null; readonly month: string; readonly replaced: number; readonly wanted: number; readonly shops: number; readonly shops_recording: number; readonly most: number };
type ShopRow = { readonly interchange: string; readonly name: string | null; readonly shop: string; readonly replaced: number; readonly wanted: number; readonly all_shops: number; readonly months: number; readonly first_month: string; readonly last_month: string };

const BY_MONTH = ["interchange", "name", "month", "replaced", "wanted", "shops", "shops_recording", "largest_share", "note"];
const BY_SHOP = ["interchange", "name", "shop", "replaced", "wanted", "share", "all_shops", "months", "pieces_a_month", "first_month", "last_month", "note"];
/** No share of fewer pieces. */
const FEWEST = 10;

const shareOf = (part: number, whole: number) => (whole < FEWEST ? null : part / whole);
const fewNote = (whole: number) => (whole < FEWEST ? `under ${FEWEST} pieces: the count is all there is` : "");

export const demandTable = (rows: readonly MonthRow[]): ReportTable => ({
  file: "demand.csv", columns: BY_MONTH,
  rows: rows.map(({ most, ...row }) => ({ ...row, largest_share: shareOf(most, row.replaced + row.wanted), note: fewNote(row.replaced + row.wanted) })),
});

export const demandShopsTable = (rows: readonly ShopRow[]): ReportTable => ({
  file: "demand-shops.csv", columns: BY_SHOP,
  rows: rows.map((row) => {
    const pieces = row.replaced + row.wanted;
    return { ...row, share: shareOf(pieces, row.all_shops), pieces_a_month: pieces / row.months, note: fewNote(row.all_shops) };
  }),
});

/** What all shops used and wanted of each group of parts by month, and how much of it each shop. */
export async function demandTables(engine: Engine): Promise<readonly ReportTable[]> {
  return [demandTable(await engine.rows<MonthRow>(byMonthSql)), demandShopsTable(await engine.rows<ShopRow>(byShopSql))];
}
