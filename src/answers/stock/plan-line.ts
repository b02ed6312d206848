import { rateInterval } from "../../stats/rate-interval.ts";
import { MONTH_DAYS } from "../days.ts";
import { money, number, pieces } from "../wording.ts";
import { choiceNotes, chosenPart } from "./chosen-part.ts";
import type { ShelfRow } from "./chosen-part.ts";
import { expectedDemand } from "./expected-demand.ts";
import type { UseBelief } from "./expected-demand.ts";
import { leadTime } from "./lead-time.ts";
import type { Delivery } from "./lead-time.ts";
import { toBuy } from "./plug-in-level.ts";
import { coverYears, lineNotes, reason } from "./reason.ts";
import type { LeadTime, PartClass, RestockLine, RestockSettings } from "./restock-line.ts";
import type { Use } from "./use-window.ts";

/** Everything known of one interchange group. */
export interface GroupFacts {
  readonly interchange: string;
  readonly rows: readonly ShelfRow[];
  readonly use: Use;
  readonly wanted: number;
  readonly waiting: number;
  /** Pieces ordered and not arrived, from the orders; null when no order is under way. */
  readonly under_way: number | null;
  readonly belief: UseBelief;
}

/** What holds for all groups. */
export interface Around {
  readonly settings: RestockSettings;
  readonly ended: ReadonlySet<string>;
  readonly deliveries: ReadonlyMap<string | null, readonly Delivery[]>;
  readonly season: (days: number) => number;
}

type Told = Omit<RestockLine, "reason">;

const sumKnown = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((sum, value) => (value === null ? sum : (sum ?? 0) + value), null);

function partClass(rows: readonly ShelfRow[]): { part_class: PartClass; class_known: boolean } {
  const known = rows.flatMap((row) => (row.essential === null ? [] : [row.essential]));
  return { part_class: known.includes(true) ? "A" : "B", class_known: known.length > 0 };
}

function onOrder({ rows, under_way }: GroupFacts): Pick<RestockLine, "on_order" | "on_order_from"> {
  const listed = sumKnown(rows.map((row) => row.on_order));
  if (listed !== null) return { on_order: listed, on_order_from: "parts list" };
  return under_way === null ? { on_order: 0, on_order_from: "nowhere" } : { on_order: under_way, on_order_from: "orders" };
}

/** Delivery and review time of the part that would be ordered. */
export function leadOf(row: ShelfRow | null, { deliveries, settings }: Pick<Around, "deliveries" | "settings">): LeadTime {
  const quote = { lead_days: row?.lead_days ?? null, lead_days_sd: row?.lead_days_sd ?? null };
  return leadTime(row === null ? [] : deliveries.get(row.supplier) ?? [], quote, settings.lead_days);
}

function shelfNotes({ rows, under_way, use }: GroupFacts, line: Told, { settings }: Around): string[] {
  const uncounted = rows.filter((row) => row.on_hand === null).map((row) => row.part_no);
  const overdue = rows.filter((row) => (row.on_order ?? 0) > 0 && row.due_on !== null && row.due_on < settings.as_of);
  return [
    ...(use.changed ? [`Use changed: ${number(use.changed.now)} in the last year, ${number(use.changed.before)} in the year before; planned on the last year.`] : []),
    ...(line.on_hand !== null && uncounted.length > 0 ? [`No shelf count for ${uncounted.join(", ")}.`] : []),
    ...(line.on_order_from === "parts list" && under_way !== null && under_way !== line.on_order
      ? [`Your parts list says ${number(line.on_order)} on order, your orders say ${number(under_way)}: the parts list is used.`] : []),
    ...overdue.map((row) => `${number(row.on_order ?? 0)} of ${row.part_no} were due on ${row.due_on ?? ""}: ask the supplier.`),
  ];
}

/** Shelf, use and times of a group, before anything is advised. */
function known(facts: GroupFacts, around: Around): Told {
  const { rows, use } = facts, chosen = chosenPart(rows, around.ended), lead = leadOf(chosen, around);
  const kind = partClass(rows), review_days = chosen?.review_days ?? around.settings.review_days;
  const per_month = (use.pieces / use.days) * MONTH_DAYS, on_hand = sumKnown(rows.map((row) => row.on_hand));
  return {
    status: "cannot tell", interchange: facts.interchange, part_no: chosen?.part_no ?? null, name: chosen?.name ?? null,
    family: chosen?.family ?? null, part_nos: rows.map((row) => row.part_no), supplier: chosen?.supplier ?? null, ...kind,
    target: around.settings.targets[kind.part_class], on_hand, ...onOrder(facts), waiting: facts.waiting,
    used: use.pieces, wanted: facts.wanted, months: use.days / MONTH_DAYS, demand_per_month: per_month,
    demand_per_month_high: (rateInterval(use.pieces, use.days)?.[1] ?? 0) * MONTH_DAYS,
    lead, review_days, protection_days: lead.days + review_days, season_factor: around.season(lead.days + review_days),
    demand_mean: null, demand_p95: null, reorder_point: null, order_up_to: null, order_qty: null,
    pack_qty: chosen?.pack_qty ?? 1, min_order_qty: chosen?.min_order_qty ?? 0, unit_cost: chosen?.unit_cost ?? null, cost: null,
    cover_years: coverYears(on_hand, per_month), notes: [],
  };
}

function advised(line: Told, facts: GroupFacts): Told {
  const { lead, review_days, season_factor, target, on_hand, on_order, waiting, pack_qty, min_order_qty, unit_cost } = line;
  const ahead = expectedDemand(facts.belief, lead, review_days, season_factor, target);
  const level = facts.use.pieces === 0 ? 0 : ahead.level;
  const demand = { demand_mean: ahead.mean, demand_p95: ahead.p95, reorder_point: level, order_up_to: level };
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

/** The advice for one group, with its reason. */
export function planLine(facts: GroupFacts, around: Around): RestockLine {
  const refused = facts.rows.find((row) => row.refused !== null)?.refused ?? null, start = known(facts, around);
  if (refused !== null) return { ...start, status: "refused", reason: `${refused} Used ${number(start.used)} in ${pieces(Math.round(start.months), "month")}.` };
  const line = advised(start, facts), chosen = chosenPart(facts.rows, around.ended);
  const notes = [
    ...shelfNotes(facts, line, around),
    ...soonerNotes(line, facts.rows, around),
    ...(chosen ? [...choiceNotes(facts.rows, chosen, around.ended), ...lineNotes(line)] : []),
  ];
  return { ...line, notes, reason: reason(line) };
}
