import { expectedBackorders } from "../../stats/stock-level.ts";
import { bestReviewPolicy } from "../../stats/review-policy.ts";
import { dayAfter, dayInWords } from "../days.ts";
import { money, number, pieces } from "../wording.ts";
import { countAhead } from "./expected-demand.ts";
import { toBuy } from "./plug-in-level.ts";
import type { RestockLine } from "./restock-line.ts";

/** What a supplier asks of an order, and from what value on its carriage is free. */
export interface OrderConditions {
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
  readonly free_from: number | null;
  readonly as_of: string;
}

/** A part to put into the order although it is not short yet. */
export interface FillUp {
  readonly line: RestockLine;
  readonly qty: number;
  readonly cost: number;
}

/** Whether to send an order now. */
export interface JointOrder {
  readonly decision: "send now" | "fill up and send" | "wait";
  /** Jobs that would be held up more when the order waits for the next order day, as expected. */
  readonly held_up: number;
  /** Parts to add, only where the decision is to fill up. */
  readonly fill: readonly FillUp[];
  readonly total: number;
  /** Next order day, when it waits. */
  readonly next_on: string;
  readonly sentence: string;
}

/** An order goes now when waiting holds up at least one job in so many orders: our own choice. */
const ONE_JOB_IN = 10;
/** What money lying on the shelf costs a year, as a share of it: our own assumption. */
const MONEY_COSTS = 0.25;

/** Beyond this many pieces an order the exact rule takes too long to look for and Harris's square root is near enough. */
const LARGEST_SEARCH = 300;

const position = (line: RestockLine): number => (line.on_hand ?? 0) + line.on_order - line.waiting;

/** Pieces short on average after `days`, jobs that wait already counted. */
function shortAfter(line: RestockLine, days: number): number {
  const shelf = position(line), ahead = countAhead(line.belief, { days, sd: line.lead.sd }, line.season_factor);
  return shelf >= 0 ? expectedBackorders(shelf, ahead) : ahead.mean - shelf;
}

/** Jobs more that wait for a line when its order goes at the next order day; a job takes what goes at once. */
function heldUp(line: RestockLine): number {
  if (line.part_class !== "A" || line.on_hand === null) return 0;
  return Math.max(0, shortAfter(line, line.lead.days + line.review_days) - shortAfter(line, line.lead.days)) / line.belief.clump;
}

/** How far to fill a line up when its order goes anyway: the cheapest (s, S) with its share of the carriage. */
function fillLevel(line: RestockLine, carriage: number): number {
  const holding = ((line.unit_cost ?? 0) * MONEY_COSTS * line.review_days) / 365, level = line.reorder_point ?? 0;
  if (!(holding > 0) || line.used === 0) return level;
  // Where hundreds of pieces cost less than the parcel, a year's use is the end of it.
  const year = level + Math.ceil((line.demand_per_month * 12) / line.pack_qty) * line.pack_qty, economic = Math.sqrt((2 * carriage * line.demand_per_month * 12) / (line.unit_cost ?? 0) / MONEY_COSTS);
  if (level + economic >= year || economic > LARGEST_SEARCH) return Math.round(Math.min(year, level + economic));
  const shortage = (holding * line.target) / (1 - line.target), period = countAhead(line.belief, { days: line.review_days, sd: 0 }, line.season_factor);
  return Math.max(level, bestReviewPolicy({ order: carriage, holding, shortage }, period, countAhead(line.belief, { days: line.protection_days, sd: line.lead.sd }, line.season_factor)).upTo);
}

/** Days until a line falls below its level at the use ahead. */
const daysLeft = (line: RestockLine): number =>
  (Math.max(0, position(line) - (line.reorder_point ?? 0)) / (line.demand_mean ?? 0)) * line.protection_days;

/** Parts next to run low, until the order is worth `goal`; null when they do not suffice. */
function fillTo(goal: number, total: number, candidates: readonly RestockLine[], carriage: number): FillUp[] | null {
  const fill: FillUp[] = [];
  let worth = total;
  for (const line of [...candidates].sort((a, b) => daysLeft(a) - daysLeft(b))) {
    if (worth >= goal) break;
    const qty = toBuy(fillLevel(line, carriage), { on_hand: line.on_hand ?? 0, on_order: line.on_order, waiting: line.waiting, pack_qty: line.pack_qty, min_order_qty: line.min_order_qty });
    if (qty === 0 || line.unit_cost === null) continue;
    fill.push({ line, qty, cost: money(qty * line.unit_cost) });
    worth = money(worth + qty * line.unit_cost);
  }
  return worth >= goal ? fill : null;
}

/** What bringing parts in before they are needed costs: their money, for the days until they would be. */
const early = (fill: readonly FillUp[]): number => fill.reduce((sum, { line, cost }) => sum + (cost * MONEY_COSTS * daysLeft(line)) / 365, 0);

const names = (fill: readonly FillUp[]): string => fill.map(({ line, qty }) => `${number(qty)} × ${line.name ?? line.part_no ?? line.interchange}`).join(", ");
function jobs(held_up: number): string {
  if (held_up < 1 / ONE_JOB_IN) return `fewer than one job in ${ONE_JOB_IN} orders`;
  return held_up < 0.95 ? `about ${pieces(Math.round(held_up * 10), "job")} in 10 such orders` : `about ${pieces(Math.round(held_up), "job")}`;
}

/**
 * Send an order now, fill it up first, or let it wait for the next order day.
 *
 * Coordinated replenishment (Balintfy 1964, Management Science 10:287-297; Silver, Pyke & Thomas 2017, ch. 11): a line
 * that would hold jobs up makes the order go; when it goes, lines next to run low may come along, where the carriage saved
 * or the minimum reached is worth more than the money lying longer. What a waiting job costs is not known, so jobs are
 * counted, not priced.
 *
 * @param ordered lines to order, at least one
 * @param enough other lines of this supplier
 */
export function jointOrder(ordered: readonly RestockLine[], enough: readonly RestockLine[], conditions: OrderConditions): JointOrder {
  const { order_cost, min_order_value, free_from, as_of } = conditions, total = money(ordered.reduce((sum, line) => sum + (line.cost ?? 0), 0));
  const held_up = ordered.reduce((sum, line) => sum + heldUp(line), 0), days = Math.min(...ordered.map((line) => line.review_days)), next_on = dayAfter(as_of, Math.round(days));
  const waiting = ordered.some((line) => position(line) < 0), urgent = waiting || held_up >= 1 / ONE_JOB_IN, carriage = order_cost ?? 0;
  const usable = enough.filter((line) => line.on_hand !== null && line.used > 0 && (line.demand_mean ?? 0) > 0), share = carriage / (ordered.length + 1);
  const small = min_order_value !== null && total < min_order_value, free = free_from !== null && total >= free_from;
  const upTo = (goal: number) => fillTo(goal, total, usable, share);
  const told = (decision: JointOrder["decision"], sentence: string, fill: readonly FillUp[] = []): JointOrder =>
    ({ decision, held_up, fill, total: money(fill.reduce((sum, one) => sum + one.cost, total)), next_on, sentence });
  const why = waiting ? "jobs on the bench wait for it" : `waiting ${number(days)} days would hold up ${jobs(held_up)}`;

  const toFree = free_from === null || free ? null : upTo(free_from);
  if (toFree !== null && toFree.length > 0 && early(toFree) < carriage && (urgent || small)) {
    return told("fill up and send", `Add ${names(toFree)} and send it: ${why}, and carriage is free from ${number(free_from ?? 0)}.`, toFree);
  }
  if (small) {
    const toSmallest = urgent ? upTo(min_order_value) : null;
    if (toSmallest !== null) return told("fill up and send", `Add ${names(toSmallest)} and send it: ${why}, and the smallest order is ${number(min_order_value)}.`, toSmallest);
    if (urgent) return told("send now", `Ask for a small order: ${why}, and nothing that runs low soon fills it up to ${number(min_order_value)}.`);
    return told("wait", `It can wait until ${dayInWords(next_on)}: ${jobs(held_up)} would be held up, and it is short of the smallest order.`);
  }
  if (!urgent && carriage > 0 && !free) return told("wait", `It can wait until ${dayInWords(next_on)} and go together with what is needed then: ${jobs(held_up)} would be held up, and one carriage of ${number(carriage)} is saved.`);
  return told("send now", `Send it now: ${urgent ? why : free ? "carriage is free" : "it costs no carriage"}.`);
}
