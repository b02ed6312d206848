import type { Engine } from "../../db/engine.ts";
import lastNumbersSql from "./last-numbers.sql?raw";
import partsKnownSql from "./parts-known.sql?raw";
import positionsThereSql from "./positions-there.sql?raw";
import reelBeforeSql from "./reel-before.sql?raw";
import reelsKnownSql from "./reels-known.sql?raw";
import ticketKnownSql from "./ticket-known.sql?raw";

export interface NumberKnown { readonly ticket_no: string; readonly received_on: string | null }
export interface TicketKnown extends NumberKnown { readonly maker: string | null; readonly model: string | null }
export interface ReelKnown { readonly maker: string | null; readonly model: string; readonly reel_kind: string | null; readonly tier: string | null; readonly tickets: number }
/** A visit of the same serial; `months` from it to the day asked for. */
export interface VisitBefore extends TicketKnown { readonly reel_kind: string | null; readonly job: string | null; readonly months: number }
/** `positions` are those of the model it is known to sit in; empty for the rest of the catalogue. */
export interface PartKnown {
  readonly part_no: string; readonly name: string | null; readonly family: string | null; readonly size: string | null; readonly on_hand: number | null;
  readonly positions: readonly string[];
}

/** What the counter needs to know of the records. */
export interface CounterFacts {
  /** Newest first. */
  readonly numbers: readonly NumberKnown[];
  /** Most often seen first. */
  readonly reels: readonly ReelKnown[];
}

export async function counterFacts(engine: Engine, signal?: AbortSignal): Promise<CounterFacts> {
  const [numbers, reels] = await Promise.all([engine.rows<NumberKnown>(lastNumbersSql, {}, signal), engine.rows<ReelKnown>(reelsKnownSql, {}, signal)]);
  return { numbers, reels };
}

/** The ticket of the records that has this number, however it is written; null when it is free. */
export async function ticketKnown(engine: Engine, ticket_no: string, signal?: AbortSignal): Promise<TicketKnown | null> {
  return (await engine.rows<TicketKnown>(ticketKnownSql, { ticket_no }, signal))[0] ?? null;
}

/** Visits of the reel with this serial, newest first, five at most; none for what reads like a person's name. */
export async function reelBefore(engine: Engine, serial: string, before: string, signal?: AbortSignal): Promise<readonly VisitBefore[]> {
  return engine.rows<VisitBefore>(reelBeforeSql, { serial, before }, signal);
}

/** What the bench needs to know of one model. */
export interface ModelFacts {
  /** Positions that fits or findings show, true, or fits deny, false; of the others nothing is known. */
  readonly there: ReadonlyMap<string, boolean>;
  readonly parts: readonly PartKnown[];
}

export async function modelFacts(engine: Engine, { maker, model }: { maker: string | null; model: string | null }, signal?: AbortSignal): Promise<ModelFacts> {
  const [there, parts] = await Promise.all([
    engine.rows<{ position: string; there: boolean }>(positionsThereSql, { maker, model }, signal),
    engine.rows<Omit<PartKnown, "positions"> & { positions: string | null }>(partsKnownSql, { maker, model }, signal),
  ]);
  return {
    there: new Map(there.map((row) => [row.position, row.there])),
    parts: parts.map((part) => ({ ...part, positions: part.positions?.split(";") ?? [] })),
  };
}
