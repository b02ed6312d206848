import type { Engine } from "../../db/engine.ts";
import { dayAfter, daysFrom } from "../days.ts";
import { demandBlocks } from "../demand/demand-blocks.ts";
import type { DemandBlocks, TicketBlockRow, UseBlockRow } from "../demand/demand-blocks.ts";
import ticketsByBlockSql from "../demand/tickets-by-block.sql?raw";
import useByBlockSql from "../demand/use-by-block.sql?raw";
import { grouped } from "../grouped.ts";
import type { RuleChange } from "../rule-changes/rule-changes.ts";
import type { ShelfRow } from "./chosen-part.ts";
import deliveriesSql from "./deliveries.sql?raw";
import groupPositionsSql from "./group-positions.sql?raw";
import type { Delivery } from "./lead-time.ts";
import { markedDeliveries, withMarks } from "./order-marks.ts";
import type { RestockSettings } from "./restock-line.ts";
import shelfSql from "./shelf.sql?raw";
import underWaySql from "./under-way.sql?raw";

/** An order that has not come within this time, and a job that has waited so long, are taken as forgotten. */
export const FORGOTTEN_DAYS = 180;

type GroupPieces = { interchange: string; pieces: number };
type DeliveryRow = Delivery & { supplier: string };

/** Everything the stock advice reads. */
export interface StockRecords {
  readonly shelf: readonly ShelfRow[];
  readonly blocks: DemandBlocks;
  /** Day of the newest ticket, the end of the newest block. */
  readonly newest: string;
  readonly waiting: ReadonlyMap<string, number>;
  readonly under_way: ReadonlyMap<string, number>;
  readonly deliveries: ReadonlyMap<string | null, readonly Delivery[]>;
  /** Day of the newest habit the owner dated that touches a group. */
  readonly habits: ReadonlyMap<string, string>;
}

/** Days of the records that count: from the first ticket to the newest not after the day asked for. */
export interface RecordsDays {
  readonly first: string;
  readonly newest: string;
  readonly as_of: string;
}

/** The newest dated habit of each group, by the positions its parts were used at; what is dated later is not known yet. */
export function datedHabits(positions: readonly { interchange: string; position: string }[], changes: readonly RuleChange[], as_of: string): Map<string, string> {
  const found = new Map<string, string>();
  for (const { interchange, position } of positions) {
    const days = changes.filter((one) => one.from <= as_of && (one.position === null || one.position === position)).map((one) => one.from);
    const newest = [...days, ...(found.has(interchange) ? [found.get(interchange) ?? ""] : [])].sort().at(-1);
    if (newest !== undefined) found.set(interchange, newest);
  }
  return found;
}

const byGroup = (rows: readonly GroupPieces[]) => new Map(rows.map(({ interchange, pieces }) => [interchange, pieces]));

function waitingOf(use: readonly UseBlockRow[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { interchange, waiting } of use) if (interchange !== null && waiting > 0) found.set(interchange, (found.get(interchange) ?? 0) + waiting);
  return found;
}

/** Everything the stock advice reads, nothing of it later than the day asked for. */
export async function stockRecords(
  engine: Engine, { first, newest, as_of }: RecordsDays, { rule_changes, marks }: Pick<RestockSettings, "rule_changes" | "marks">, signal?: AbortSignal,
): Promise<StockRecords> {
  const since = dayAfter(as_of, -FORGOTTEN_DAYS), to_date = newest;
  const [shelf, use, tickets, under_way, deliveries, positions] = await Promise.all([
    engine.rows<ShelfRow>(shelfSql, {}, signal),
    engine.rows<UseBlockRow>(useByBlockSql, { to_date, waiting_from: since }, signal),
    engine.rows<TicketBlockRow>(ticketsByBlockSql, { to_date }, signal),
    engine.rows<GroupPieces>(underWaySql, { as_of, since }, signal),
    engine.rows<DeliveryRow>(deliveriesSql, { as_of }, signal),
    rule_changes.length === 0 ? [] : engine.rows<{ interchange: string; position: string }>(groupPositionsSql, {}, signal),
  ]);
  const quoted = new Map(shelf.map((row) => [row.supplier, row.lead_days])), by_hand = markedDeliveries(marks, as_of, (supplier) => quoted.get(supplier) ?? null);
  return {
    ...withMarks(shelf, byGroup(under_way), marks, as_of), newest,
    blocks: demandBlocks(use, tickets, daysFrom(first, newest) + 1, daysFrom(newest, as_of)),
    waiting: waitingOf(use), habits: datedHabits(positions, rule_changes, as_of),
    deliveries: grouped<string | null, DeliveryRow>([...deliveries, ...by_hand], (row) => row.supplier),
  };
}
