import type { Engine } from "../../db/engine.ts";
import { rateKnowledge } from "../../stats/gamma-poisson.ts";
import { fitGammaPrior } from "../../stats/gamma-prior.ts";
import { dayAfter } from "../days.ts";
import { grouped } from "../grouped.ts";
import { clumpSizes } from "./clump.ts";
import type { ShelfRow } from "./chosen-part.ts";
import deliveriesSql from "./deliveries.sql?raw";
import intakeSql from "./intake.sql?raw";
import type { Delivery } from "./lead-time.ts";
import type { GroupFacts } from "./plan-line.ts";
import type { IntakeDay } from "./season-factor.ts";
import shelfSql from "./shelf.sql?raw";
import underWaySql from "./under-way.sql?raw";
import unmappedSql from "./unmapped-pieces.sql?raw";
import useSql from "./use.sql?raw";
import { useOf } from "./use-window.ts";
import type { UseWindow } from "./use-window.ts";

/** An order that has not come within this time, and a job that has waited so long, are taken as forgotten. */
const FORGOTTEN_DAYS = 180;

export type UseRow = { interchange: string; pieces: number; wanted: number; recent: number; waiting: number; squares: number };
export type UnderWayRow = { interchange: string; pieces: number; orders: number };
type DeliveryRow = Delivery & { supplier: string };

export interface StockRecords {
  readonly shelf: readonly ShelfRow[];
  readonly use: readonly UseRow[];
  readonly under_way: readonly UnderWayRow[];
  readonly deliveries: ReadonlyMap<string | null, readonly Delivery[]>;
  readonly intake: readonly IntakeDay[];
  readonly unmapped_pieces: number;
}

/** Everything the stock advice reads, nothing of it later than `as_of`. */
export async function stockRecords(engine: Engine, as_of: string, window: UseWindow, signal?: AbortSignal): Promise<StockRecords> {
  const since = dayAfter(as_of, -FORGOTTEN_DAYS), { from, to, recent_from } = window;
  const [shelf, use, under_way, deliveries, intake, unmapped] = await Promise.all([
    engine.rows<ShelfRow>(shelfSql, {}, signal),
    engine.rows<UseRow>(useSql, { from_date: from, recent_from, to_date: to, waiting_from: since }, signal),
    engine.rows<UnderWayRow>(underWaySql, { as_of, since }, signal),
    engine.rows<DeliveryRow & { ordered_on: string; arrived_on: string }>(deliveriesSql, { as_of }, signal),
    engine.rows<IntakeDay>(intakeSql, { to_date: to }, signal),
    engine.rows<{ pieces: number }>(unmappedSql, { from_date: from, to_date: to }, signal),
  ]);
  return { shelf, use, under_way, deliveries: grouped<string | null, DeliveryRow>(deliveries, (row) => row.supplier), intake, unmapped_pieces: unmapped[0]?.pieces ?? 0 };
}

/**
 * One entry an interchange group, of everything in the catalogue or used: its rows, its use, and what is known of its rate
 * when all lines together say what lines are like. Lines that mix several parts do not take part in that.
 */
export function groupFacts({ shelf, use, under_way }: StockRecords, window: UseWindow): GroupFacts[] {
  const used = new Map(use.map((row) => [row.interchange, row])), coming = new Map(under_way.map((row) => [row.interchange, row.pieces]));
  const rows = grouped(shelf, (row) => row.interchange);
  const names = [...new Set([...rows.keys(), ...used.keys()])].sort();
  const uses = new Map(names.map((name) => [name, useOf(used.get(name)?.pieces ?? 0, used.get(name)?.recent ?? 0, window)]));
  const plannable = names.filter((name) => !rows.get(name)?.some((row) => row.refused !== null)).map((name) => uses.get(name));
  const known = plannable.filter((one) => one !== undefined);
  const prior = known.length === 0 ? { shape: 0.5, rate: window.days } : fitGammaPrior(known.map((one) => one.pieces), known.map((one) => one.days));
  const clumps = clumpSizes(names.map((name) => used.get(name) ?? { pieces: 0, squares: 0 }));
  return names.map((interchange, i) => {
    const one = uses.get(interchange) ?? useOf(0, 0, window);
    return {
      interchange, rows: rows.get(interchange) ?? [], use: one, wanted: used.get(interchange)?.wanted ?? 0,
      waiting: used.get(interchange)?.waiting ?? 0, under_way: coming.get(interchange) ?? null,
      belief: { ...rateKnowledge(prior, one.pieces, one.days), clump: clumps[i] ?? 1 },
    };
  });
}
