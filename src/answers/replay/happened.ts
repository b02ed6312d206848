import { dayNumber } from "../budget/past-jobs.ts";
import { grouped } from "../grouped.ts";
import type { PolicyScore, ReplayRecords } from "./replay.ts";
import type { ReplayWorld } from "./world-of.ts";

/** What lay on the shelf on average, by the first day's shelf, what was used and what came in. */
function stockValue({ past, orders }: ReplayRecords, { world }: ReplayWorld): number {
  const at = new Map(world.groups.map(({ interchange }, index) => [interchange, index])), moves = new Map<number, [number, number][]>();
  const move = (day: string, interchange: string, pieces: number) => {
    const group = at.get(interchange), number = dayNumber(day);
    if (group !== undefined && number >= world.first && number <= world.last) moves.set(number, [...(moves.get(number) ?? []), [group, pieces]]);
  };
  past.use.forEach((row) => { if (!row.wanted) move(row.day, row.interchange, -row.pieces); });
  orders.forEach((row) => { if (row.arrived_on !== null) move(row.arrived_on, row.interchange, row.pieces); });
  const on_hand = world.groups.map(({ opening }) => opening);
  let sum = 0;
  for (let day = world.first; day <= world.last; day += 1) {
    for (const [group, pieces] of moves.get(day) ?? []) on_hand[group] = (on_hand[group] as number) + pieces;
    sum += on_hand.reduce((value, pieces, group) => value + Math.max(0, pieces) * (world.groups[group]?.unit_cost ?? 0), 0);
  }
  return sum / (world.last - world.first + 1);
}

/** Jobs that count, with the wait written on their tickets. */
function ticketWaits({ parts, waits }: ReplayRecords, { world }: ReplayWorld): { jobs: number; days: number[] } | null {
  const known = new Set(world.groups.map(({ interchange }) => interchange)), written = new Map(waits.map((row) => [row.ticket_no, row.wait_days]));
  const inside = parts.filter(({ day }) => dayNumber(day) >= world.first && dayNumber(day) <= world.last);
  const days = [...grouped(inside, ({ ticket_no }) => ticket_no)].flatMap(([ticket_no, lines]) => {
    const wait = written.get(ticket_no) ?? null;
    return wait !== null && lines.every(({ interchange }) => known.has(interchange)) ? [wait] : [];
  });
  return days.length === 0 ? null : { jobs: days.length, days: days.filter((wait) => wait > 0) };
}

/** What the shop's own records say of the same time: waits as written on the tickets, orders as sent. */
export function whatHappened(records: ReplayRecords, there: ReplayWorld): PolicyScore {
  const tickets = ticketWaits(records, there), { world } = there, cost = new Map(world.groups.map(({ interchange, unit_cost }) => [interchange, unit_cost]));
  const sent = records.orders.filter(({ interchange, ordered_on }) => cost.has(interchange) && dayNumber(ordered_on) >= world.first && dayNumber(ordered_on) <= world.last);
  const waited = tickets && tickets.days.length, value = stockValue(records, there);
  return {
    policy: "what happened", kind: "happened", jobs: tickets?.jobs ?? 0, waited: waited === null ? null : { mean: waited, low: waited, high: waited },
    jobs_without_wait: tickets === null || waited === null ? null : 1 - waited / tickets.jobs,
    wait_days: tickets && tickets.days.length > 0 ? tickets.days.reduce((sum, one) => sum + one, 0) / tickets.days.length : null,
    stock_value_mean: { mean: value, low: value, high: value }, orders: grouped(sent, ({ order_no, supplier, ordered_on }) => `${order_no ?? ordered_on} ${supplier ?? ""}`).size,
    spend: sent.reduce((sum, { pieces, interchange, unit_cost }) => sum + pieces * (unit_cost ?? cost.get(interchange) ?? 0), 0), carriage: null, dead_stock: null,
  };
}
