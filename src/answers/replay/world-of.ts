import { dayNumber, pastJobs } from "../budget/past-jobs.ts";
import { dayAfter } from "../days.ts";
import { grouped } from "../grouped.ts";
import type { RestockLine } from "../stock/restock-line.ts";
import type { ReplayRecords } from "./replay.ts";
import type { Coming, ReplayGroup, ReplayJob, ReplaySupplier, World } from "./world.ts";

/** Records before the first order day of a replay: what every way of ordering has to go by. */
const LEARNT_DAYS = 365;
/** A replay of less than this tells nothing. */
const SHORTEST_DAYS = 182;

/** A line that can be replayed: it can be planned, and its count and price are known. */
const replayable = (line: RestockLine): boolean => line.status !== "refused" && line.on_hand !== null && line.unit_cost !== null;

/**
 * The shelf on the first day, told backwards from today's count: what was used since is put back, what came in since is
 * taken away. Where the books do not add up (parts given away, or never booked) an empty shelf is taken, and counted.
 */
export function openingShelf(line: RestockLine, first: string, { past, orders }: Pick<ReplayRecords, "past" | "orders">): number {
  const used = past.use.reduce((sum, row) => (row.interchange === line.interchange && row.day >= first && !row.wanted ? sum + row.pieces : sum), 0);
  const came = orders.reduce((sum, row) => (row.interchange === line.interchange && row.arrived_on !== null && row.arrived_on >= first ? sum + row.pieces : sum), 0);
  return (line.on_hand ?? 0) + used - came;
}

function groupsOf(lines: readonly RestockLine[], first: string, records: ReplayRecords): ReplayGroup[] {
  return lines.map((line) => ({
    interchange: line.interchange, supplier: line.supplier, unit_cost: line.unit_cost ?? 0, pack_qty: line.pack_qty, min_order_qty: line.min_order_qty,
    opening: Math.max(0, openingShelf(line, first, records)),
  }));
}

function suppliersOf(lines: readonly RestockLine[], { past }: ReplayRecords): ReplaySupplier[] {
  const rows = new Map([...past.shelf].reverse().map((row) => [row.supplier, row]));
  return [...grouped(lines, ({ supplier }) => supplier)].map(([supplier, own]) => {
    const row = rows.get(supplier);
    return { supplier, review_days: Math.max(1, Math.round(own[0]?.review_days ?? 1)), order_cost: row?.order_cost ?? null, min_order_value: row?.min_order_value ?? null };
  });
}

function jobsOf({ parts }: ReplayRecords, names: readonly string[], first: number, last: number): ReplayJob[] {
  const known = new Set(names), tickets = grouped(parts.filter(({ day }) => dayNumber(day) >= first && dayNumber(day) <= last), ({ day, ticket_no }) => `${day} ${ticket_no}`);
  return [...tickets.values()].flatMap((lines) => {
    const counts = lines.every(({ interchange }) => known.has(interchange));
    return pastJobs(lines, names).map((job) => ({ ...job, counts }));
  });
}

/** Orders sent before the replay begins that came in while it runs. */
function comingOf({ orders }: ReplayRecords, names: readonly string[], first: string, last: number): Coming[] {
  const at = new Map(names.map((name, index) => [name, index]));
  return orders.flatMap(({ interchange, ordered_on, arrived_on, pieces }) => {
    const group = at.get(interchange);
    if (group === undefined || arrived_on === null || ordered_on >= first || arrived_on < first || dayNumber(arrived_on) > last) return [];
    return [{ day: dayNumber(arrived_on), group, pieces }];
  });
}

export interface ReplayWorld {
  readonly world: World;
  readonly lines: readonly RestockLine[];
  /** Groups whose books do not add up, so that the first shelf was taken as empty. */
  readonly unbalanced: number;
}

/** What every way of ordering goes through; or why there is nothing to replay. */
export function worldOf(records: ReplayRecords): ReplayWorld | "too short" | "no parts" {
  const { past, settings } = records, begin = past.intake[0]?.day, end = past.intake.at(-1)?.day;
  if (begin === undefined || end === undefined) return "too short";
  const from = dayAfter(begin, LEARNT_DAYS), first = dayNumber(from), last = Math.min(dayNumber(end), dayNumber(settings.as_of));
  if (last - first + 1 < SHORTEST_DAYS) return "too short";
  const lines = records.lines.filter(replayable).sort((a, b) => (a.interchange < b.interchange ? -1 : 1)), names = lines.map(({ interchange }) => interchange);
  const jobs = jobsOf(records, names, first, last);
  if (jobs.length === 0) return "no parts";
  const unbalanced = lines.filter((line) => openingShelf(line, from, records) < 0).length;
  return { lines, unbalanced, world: { first, last, groups: groupsOf(lines, from, records), suppliers: suppliersOf(lines, records), jobs, coming: comingOf(records, names, from, last) } };
}
