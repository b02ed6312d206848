import Papa from "papaparse";
import bearingsCsv from "./settings/bearings.csv?raw";
import livesCsv from "./settings/lives.csv?raw";
import minutesCsv from "./settings/minutes.csv?raw";
import modelsCsv from "./settings/models.csv?raw";
import stockCsv from "./settings/stock.csv?raw";
import suppliersCsv from "./settings/suppliers.csv?raw";

/** S spinning, C conventional, B baitcaster, F fly. */
export type Kind = "S" | "C" | "B" | "F";
export type Tier = "premium" | "upper" | "mid" | "budget";
export type Water = "fresh" | "brackish" | "salt";
export type Rinse = "always" | "sometimes" | "never";
export type JobCode = "FULL" | "EXT" | "LR" | "DRAG" | "AR" | "BAIL" | "GEAR" | "LW" | "SPB" | "HDL" | "SEAL" | "DUNK" | "DIAG";

export interface Model {
  code: string; maker: string; model: string; kind: Kind; tier: Tier; sealed: boolean; new_price: number;
  fleet_share: number; mix: Record<Water, number>; on_sale: number; large: boolean; discontinued_on: string; absent: string[];
}
/** How long a position lasts, in days of fresh-water wear at a mid tier, and how its failure brings the reel in. */
export interface Life {
  position: string; kinds: string; shape: number; scale_days: number; salt_class: number; notice: number;
  routine_share: number; opened_by: string[]; complaint_job: JobCode;
}
export interface BearingUse { model: string; position: string; size: string; qty: number }
export interface Minutes { median_min: number; log_sigma: number; menu_price: number }
export interface StockLine {
  part_no: string; name: string; family: string; supplier: string; unit_cost: number; price: number | null; pack_qty: number;
  min_order_qty: number; on_hand: number; on_order: number; use_per_year: number | null; criticality: "A" | "B"; size: string;
  material: string; replaces: string; positions: string[]; models: string[];
}
export interface Supplier {
  code: string; supplier: string; order_cost: number; min_order_value: number; quoted_days: number;
  actual_mean_days: number; actual_sd_days: number; order_days: string[];
}

const list = (text: string, separator: string) => (text === "" ? [] : text.split(separator));
const numberOrNull = (text: string) => (text === "" ? null : Number(text));

function rows<Row>(csv: string, row: (at: (column: string) => string) => Row): Row[] {
  const { data } = Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true });
  return data.map((line) => row((column) => {
    const value = line[column];
    if (value === undefined) throw new RangeError(`demo settings: a line lacks the column ${column}: ${JSON.stringify(line)}`);
    return value;
  }));
}

export const MODELS: readonly Model[] = rows(modelsCsv, (at) => ({
  code: at("code"), maker: at("maker"), model: at("model"), kind: at("kind") as Kind, tier: at("tier") as Tier,
  sealed: at("sealed") === "yes", new_price: Number(at("new_price")), fleet_share: Number(at("fleet_share")),
  mix: { fresh: Number(at("fresh")), brackish: Number(at("brackish")), salt: Number(at("salt")) },
  on_sale: Number(at("on_sale")), large: at("large") === "yes", discontinued_on: at("discontinued_on"), absent: list(at("absent"), ";"),
}));

export const LIVES: readonly Life[] = rows(livesCsv, (at) => ({
  position: at("position"), kinds: at("kinds"), shape: Number(at("shape")), scale_days: Number(at("scale_days")),
  salt_class: Number(at("salt_class")), notice: Number(at("notice")), routine_share: Number(at("routine_share")),
  opened_by: list(at("opened_by"), " "), complaint_job: at("complaint_job") as JobCode,
}));

export const BEARINGS: readonly BearingUse[] = rows(bearingsCsv, (at) => ({
  model: at("model"), position: at("position"), size: at("size"), qty: Number(at("qty")),
}));

export const STOCK: readonly StockLine[] = rows(stockCsv, (at) => ({
  part_no: at("part_no"), name: at("name"), family: at("family"), supplier: at("supplier"), unit_cost: Number(at("unit_cost")),
  price: numberOrNull(at("price")), pack_qty: Number(at("pack_qty")), min_order_qty: Number(at("min_order_qty")),
  on_hand: Number(at("on_hand")), on_order: Number(at("on_order")), use_per_year: numberOrNull(at("use_per_year")),
  criticality: at("criticality") as "A" | "B", size: at("size"), material: at("material"), replaces: at("replaces"),
  positions: list(at("positions"), ";"), models: list(at("models"), " "),
}));

export const SUPPLIERS: readonly Supplier[] = rows(suppliersCsv, (at) => ({
  code: at("code"), supplier: at("supplier"), order_cost: Number(at("order_cost")), min_order_value: Number(at("min_order_value")),
  quoted_days: Number(at("quoted_days")), actual_mean_days: Number(at("actual_mean_days")),
  actual_sd_days: Number(at("actual_sd_days")), order_days: list(at("order_days"), ";"),
}));

/** Bench minutes and menu price by job and kind; `FULL C:JAR` is the two-speed lever drag. */
export const MINUTES: ReadonlyMap<string, Minutes> = new Map(rows(minutesCsv, (at) => [
  `${at("job")} ${at("kind")}`,
  { median_min: Number(at("median_min")), log_sigma: Number(at("log_sigma")), menu_price: Number(at("menu_price")) },
] as const));

/** Jobs that this kind of reel knows; any other becomes a full service. */
export const knows = (kind: Kind, job: JobCode): boolean => MINUTES.has(`${job} ${kind}`);
