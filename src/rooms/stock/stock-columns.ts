import type { RestockLine } from "../../answers/stock/restock-line.ts";
import { DASH, money, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";
import type { DraftLine } from "./order-draft.ts";
import { lineName } from "./stock-words.ts";

type Columns = readonly Column<RestockLine>[];
const right = { align: "right" } as const;
const pieces = (key: "on_hand" | "on_order" | "waiting" | "reorder_point" | "order_qty" | "order_up_to", label: string): Column<RestockLine> =>
  ({ key, label, ...right, value: (line) => line[key], text: (line) => number(line[key]) });
const quiet = (column: Column<RestockLine>): Column<RestockLine> =>
  ({ ...column, text: (line) => (column.value(line) === 0 ? DASH : number(Number(column.value(line)))) });

const part = { key: "name", label: "Part", wide: true, value: lineName };
const part_no = { key: "part_no", label: "Number", value: (line: RestockLine) => line.part_no };
const reason = { key: "reason", label: "Why", wide: true, sortable: false, value: (line: RestockLine) => line.reason };
const cost = (currency: string): Column<RestockLine> =>
  ({ key: "cost", label: "Cost", ...right, value: (line) => line.cost, text: (line) => money(line.cost, currency, 2) });

/** What goes to one supplier; parts that only fill the order up say so. */
export const draftColumns = (currency: string): readonly Column<DraftLine>[] => [
  { ...part, value: ({ line }) => lineName(line) }, { ...part_no, value: ({ line }) => line.part_no },
  { key: "order_qty", label: "Order", unit: "pieces", ...right, value: ({ qty }) => qty },
  { key: "cost", label: "Cost", ...right, value: ({ line, qty }) => (line.unit_cost === null ? null : qty * line.unit_cost), text: ({ line, qty }) => money(line.unit_cost === null ? null : qty * line.unit_cost, currency, 2) },
  { ...reason, value: ({ line, extra }) => (extra ? `Not short yet, but next to run low: fills the order up. ${line.reason}` : line.reason) },
];

/** The whole table, one line for each group of parts that are the same thing; the reason stands under the name. */
export const lineColumns = (currency: string): Columns => [
  part,
  { ...quiet(pieces("order_qty", "Order")) },
  { ...cost(currency), text: (line) => (line.cost === 0 ? DASH : money(line.cost, currency, 2)) },
  pieces("on_hand", "On hand"), { ...quiet(pieces("on_order", "On order")), spare: true }, { ...quiet(pieces("waiting", "Jobs wait")), spare: true },
  { key: "demand_per_month", label: "Used", unit: "a month", ...right, value: (line) => line.demand_per_month, text: (line) => number(line.demand_per_month, 1) },
  { key: "demand_mean", label: "Until next", unit: "expected", spare: true, ...right, value: (line) => line.demand_mean, text: (line) => number(line.demand_mean, 1) },
  { key: "demand_p95", label: "Until next", unit: "19 in 20 under", ...right, value: (line) => line.demand_p95, text: (line) => number(line.demand_p95) },
  pieces("reorder_point", "Order below"),
];

/** Lines that cannot be planned. */
export const REFUSED_COLUMNS: Columns = [
  part, part_no, pieces("on_hand", "On hand"),
  { key: "used", label: "Used", ...right, value: (line) => line.used, text: (line) => number(line.used) }, reason,
];

/** What a CSV file of an order holds; keys are the file's headings. */
export const ORDER_FILE: Columns = [
  { key: "part_no", label: "", value: (line) => line.part_no },
  { key: "interchange", label: "", value: (line) => line.interchange },
  { key: "name", label: "", value: (line) => line.name },
  { key: "supplier", label: "", value: (line) => line.supplier },
  { key: "order_qty", label: "", value: (line) => line.order_qty },
  { key: "pack_qty", label: "", value: (line) => line.pack_qty },
  { key: "unit_cost", label: "", value: (line) => line.unit_cost },
  { key: "cost", label: "", value: (line) => line.cost },
  { key: "on_hand", label: "", value: (line) => line.on_hand },
  { key: "on_order", label: "", value: (line) => line.on_order },
  { key: "demand_mean", label: "", value: (line) => line.demand_mean },
  { key: "demand_p95", label: "", value: (line) => line.demand_p95 },
  { key: "reorder_point", label: "", value: (line) => line.reorder_point },
  { key: "order_up_to", label: "", value: (line) => line.order_up_to },
  { key: "reason", label: "", value: (line) => line.reason },
];

/** What of it a supplier needs to know. */
export const SUPPLIER_FILE: Columns = ORDER_FILE.filter(({ key }) => ["part_no", "name", "supplier", "order_qty", "pack_qty", "unit_cost", "cost"].includes(key));
