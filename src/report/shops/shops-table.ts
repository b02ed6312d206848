import type { ReportTable } from "../table.ts";

/** What became of one shop's folder. */
export interface ShopLine {
  readonly shop: string;
  readonly tickets: number;
  readonly findings: number;
  readonly inspections: number;
  readonly failed: number;
  readonly from: string | null;
  readonly to: string | null;
  readonly rows_read: number;
  readonly rows_to_fix: number;
  /** Files that could not be read, each with its reason. */
  readonly note: string;
}

const COLUMNS = ["shop", "tickets", "inspections", "from", "to", "rows_to_fix", "findings", "failed", "rows_read", "note"];

/** The shops by name, with how much each brought: no shop is held against another. */
export const shopsTable = (shops: readonly ShopLine[]): ReportTable => ({ file: "shops.csv", columns: COLUMNS, rows: shops.map((shop) => ({ ...shop })) });
