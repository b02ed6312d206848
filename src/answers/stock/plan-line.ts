import { rateInterval } from "../../stats/rate-interval.ts";
import { dayAfter, MONTH_DAYS } from "../days.ts";
import { money, number, pieces } from "../wording.ts";
import { choiceNotes } from "./chosen-part.ts";
import type { ShelfRow } from "./chosen-part.ts";
import { expectedDemand } from "./expected-demand.ts";
import type { GroupFacts } from "./group-facts.ts";
import { leadOf } from "./order-terms.ts";
import type { Around } from "./order-terms.ts";
import { toBuy } from "./plug-in-level.ts";
import { coverYears, lineNotes, reason } from "./reason.ts";
import type { RestockLine } from "./restock-line.ts";
import { useNotes } from "./use-notes.ts";

type Told = Omit<RestockLine, "reason">;

const sumKnown = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((sum, value) => (value === null ? sum : (sum ?? 0) + value), null);

function onOrder({ rows, under_way }: GroupFacts): Pick<RestockLine, "on_order" | "on_order_from"> {
  const listed = sumKnown(rows.map((row) => row.on_order));
  if (listed !== null) return { on_order: listed, on_order_from: "parts list" };
  return under_way === null ? { on_order: 0, on_order_from: "nowhere" } : { on_order: under_way, on_order_from: "orders" };
}

function shelfNotes({ rows, under_way }: GroupFacts, line: Told, { settings }: Around): string[] {
  const uncounted = rows.filter((row) => row.on_hand === null).map((row) => row.part_no);
  const overdue = rows.filter((row) => (row.on_order ?? 0) > 0 && row.due_on !== null && row.due_on < settings.as_of);
  return [
    ...(line.on_hand !== null && uncounted.length > 0 ? [`No shelf count for ${uncounted.join(", ")}.`] : []),
    ...(line.on_order_from === "parts list" && under_way !== null && under_way !== line.on_order
      ? [`Your parts list says ${number(line.on_order)} on order, your orders say ${number(under_way)}: the parts list is used.`] : []),
    ...overdue.map((row) => `${number(row.on_order ?? 0)} of ${row.part_no} were due on ${row.due_on ?? ""}: ask the supplier.`),
  ];
}

/** Shelf, use and times of a group, before anything is advised. */
function known(facts: GroupFacts, newest: string): Told {
  const { rows, terms, outlook, factor } = facts, { chosen, lead, review_days } = terms, { used, wanted, used_days, change, choice } = outlook;
  const per_month = used_days === 0 ? 0 : (used / used_days) * MONTH_DAYS, on_hand = sumKnown(rows.map((row) => row.on_hand));
  return {
    status: "cannot tell", interchange: facts.interchange, part_no: chosen?.part_no ?? null, name: chosen?.name ?? null,
    family: chosen?.family ?? null, part_nos: rows.map((row) => row.part_no), supplier: chosen?.supplier ?? null, part_class: terms.part_class,
    class_known: terms.class_known, target: terms.target, on_hand, ...onOrder(facts),
    listed: { on_hand: chosen?.listed_on_hand ?? null, on_order: chosen?.listed_on_order ?? null }, waiting: facts.waiting,
    used, wanted, ...(used_days === 0 ? { used_from: null, used_to: null } : { used_from: dayAfter(newest, 1 - used_days), used_to: newest }), months: used_days / MONTH_DAYS, demand_per_month: per_month,
    demand_per_month_high: used_days === 0 ? 0 : (rateInterval(used, used_days)?.[1] ?? 0) * MONTH_DAYS,
    changed_on: change === null ? null : dayAfter(newest, 1 - change.days_ago), routes: choice.routes, looks: choice.looks,
    lead, review_days, protection_days: lead.days + review_days, season_factor: factor, belief: facts.belief,
    demand_mean: null, demand_p95: null, reorder_point: null, level_chance: null, order_up_to: null, order_qty: null,
    pack_qty: chosen?.pack_qty ?? 1, min_order_qty: chosen?.min_order_qty ?? 0, unit_cost: chosen?.unit_cost ?? null, cost: null,
    cover_years: coverYears(on_hand, per_month), notes: [],
  };
}

function advised(line: Told, { belief }: GroupFacts): Told {
  const { lead, review_days, season_factor, target, on_hand, on_order, waiting, pack_qty, min_order_qty, unit_cost } = line;
  const ahead = expectedDemand(belief, lead, review_days, season_factor, target), level = line.used === 0 ? 0 : ahead.level;
  const demand = {
    demand_mean: ahead.mean, demand_p95: ahead.p95, reorder_point: level, order_up_to: level,
    level_chance: level === ahead.level ? ahead.level_chance : null,
  };
  if (on_hand === null || line.part_no === null) return { ...line, ...demand };
  const order_qty = toBuy(level, { on_hand, on_order, waiting, pack_qty, min_order_qty });
  const cost = unit_cost === null ? null : money(order_qty * unit_cost);
  return { ...line, ...demand, status: order_qty > 0 ? "order" : "enough", order_qty, cost };
}

/** Another number of the same part that comes much sooner, where the shelf will hardly last until the cheap one is here. */
function soonerNotes(line: Told, rows: readonly ShelfRow[], around: Around): string[] {
  const position = (line.on_hand ?? 0) + line.on_order - line.waiting;
  const until = ((line.demand_mean ?? 0) * line.lead.days) / line.protection_days;
  const sooner = rows.filter((row) => row.part_no !== line.part_no && !around.ended.has(row.part_no))
    .map((row) => ({ row, days: leadOf(row, around).days })).filter(({ days }) => days < line.lead.days / 2)
    .sort((a, b) => a.days - b.days)[0];
  if (line.status !== "order" || position >= until || sooner === undefined) return [];
  const from = sooner.row.supplier === null ? "" : ` from ${sooner.row.supplier}`;
  return [`The shelf may not last ${number(line.lead.days)} days: ${sooner.row.part_no}${from} comes in ${number(sooner.days)}.`];
}

/** The advice for one group, with its reason; `newest` is the day of the newest ticket. */
export function planLine(facts: GroupFacts, around: Around, newest: string): RestockLine {
  const refused = facts.rows.find((row) => row.refused !== null)?.refused ?? null, start = known(facts, newest);
  if (refused !== null) return { ...start, status: "refused", reason: `${refused} Used ${number(start.used)} in ${pieces(Math.round(start.months), "month")}.` };
  const line = advised(start, facts), { chosen } = facts.terms;
  const notes = [
    ...useNotes(facts, line),
    ...shelfNotes(facts, line, around),
    ...soonerNotes(line, facts.rows, around),
    ...(chosen ? [...choiceNotes(facts.rows, chosen, around.ended), ...lineNotes(line)] : []),
  ];
  return { ...line, notes, reason: reason(line) };
}
