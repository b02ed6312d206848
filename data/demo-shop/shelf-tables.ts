import { EXTRA_POSITIONS, KIND_WORDS, extraNeed } from "./catalogue.ts";
import type { Need } from "./catalogue.ts";
import { dayOf, iso } from "./days.ts";
import type { Day } from "./days.ts";
import { money, yesNo } from "./rows.ts";
import type { Row } from "./rows.ts";
import { SUPPLIERS } from "./settings.ts";
import type { Supplier } from "./settings.ts";
import { AS_OF } from "./shop.ts";
import type { Past } from "./shop.ts";

const supplierOf = (code: string): Supplier => {
  const found = SUPPLIERS.find((one) => one.code === code);
  if (!found) throw new RangeError(`supplierOf: no supplier ${code}`);
  return found;
};

/** When the orders still under way on the last day were sent. */
const SENT: Readonly<Record<string, Day>> = { ALD: dayOf(2026, 1, 2), ZET: dayOf(2025, 12, 15) };
const SCREWS_PER_REEL = 4, REVIEW_DAYS = 14;

export const modelRows = (past: Past): Row[] => past.plans.map(({ model }) => ({
  maker: model.maker, model: model.model, reel_kind: KIND_WORDS[model.kind], sealed: yesNo(model.sealed), tier: model.tier,
  new_price: model.new_price, discontinued_on: model.discontinued_on,
}));

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const sent = (supplier: string) => SENT[supplier] ?? dayOf(2025, 12, 29);

export const partRows = (past: Past): Row[] => past.lines.map((line) => {
  const supplier = supplierOf(line.supplier);
  return {
    part_no: line.part_no, name: line.name, family: line.family, supplier: supplier.supplier, unit_cost: line.unit_cost, pack_qty: line.pack_qty,
    min_order_qty: line.min_order_qty, lead_days: supplier.quoted_days, on_hand: line.on_hand, on_order: line.on_order,
    due_on: line.on_order > 0 ? iso(sent(line.supplier) + supplier.quoted_days) : null, size: line.size, material: line.material,
    replaces: line.replaces, essential: yesNo(line.criticality === "A"),
  };
});

/** Which part sits where; a position the model does not have is a row without a part and with no pieces. */
export function fitRows(past: Past): Row[] {
  return past.plans.flatMap(({ model, places }) => {
    const name = { maker: model.maker, model: model.model };
    const rows = (position: string, need: Need | null) => (need?.lines ?? []).map((line) =>
      ({ ...name, position, part_no: line.part_no, qty: need?.screws ? SCREWS_PER_REEL : need?.qty ?? 1 }));
    const extra = EXTRA_POSITIONS.filter((position) => position === "line_roller_seal" || position === "pinion_bearing_rear");
    return [
      ...places.flatMap((place) => rows(place.life.position, place.need)),
      ...extra.flatMap((position) => rows(position, extraNeed(model, position, past.lines, past.world))),
      ...model.absent.map((position) => ({ ...name, position, part_no: null, qty: 0 })),
    ];
  });
}

export const supplierRows = (): Row[] => SUPPLIERS.map((one) => ({
  supplier: one.supplier, order_cost: one.order_cost, min_order_value: one.min_order_value, lead_days: one.quoted_days, review_days: REVIEW_DAYS,
}));

/** What was ordered and has come, and the orders under way that make up the shelf's `on_order`; an order is one supplier's on one day. */
export function orderRows(past: Past): Row[] {
  const come = past.shipments.filter((shipment) => shipment.arrives <= AS_OF)
    .map(({ line, qty, ordered, arrives }) => ({ line, qty, ordered, arrived: arrives as Day | null }));
  const under_way = past.lines.filter((line) => line.on_order > 0)
    .map((line) => ({ line, qty: line.on_order, ordered: sent(line.supplier), arrived: null }));
  const all = [...come, ...under_way].sort((a, b) =>
    a.ordered - b.ordered || byText(a.line.supplier, b.line.supplier) || byText(a.line.part_no, b.line.part_no));
  const numbers = new Map<string, string>();
  return all.map(({ line, qty, ordered, arrived }) => {
    const key = `${line.supplier} ${ordered} ${arrived === null}`;
    if (!numbers.has(key)) numbers.set(key, `PO-${String(numbers.size + 1).padStart(4, "0")}`);
    return {
      order_no: numbers.get(key) ?? null, supplier: supplierOf(line.supplier).supplier, part_no: line.part_no, qty, ordered_on: iso(ordered),
      arrived_on: arrived === null ? null : iso(arrived), unit_cost: money(line.unit_cost),
    };
  });
}
