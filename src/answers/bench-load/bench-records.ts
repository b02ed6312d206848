import type { Engine } from "../../db/engine.ts";
import { packedRows, unpackedRows } from "../../db/packed-rows.ts";
import type { PackedRows } from "../../db/packed-rows.ts";
import { dayAfter } from "../days.ts";
import receivedSql from "../season/received-by-day.sql?raw";
import type { BenchRates } from "../labour/bench-rates.ts";
import type { Closure } from "../season/bench-calendar.ts";
import type { DayCount } from "../season/open-days.ts";
import type { SeasonRecords } from "../season/season.ts";
import awaitedSql from "./awaited-parts.sql?raw";
import ticketsSql from "./bench-tickets.sql?raw";
import type { BenchHours } from "./bench-hours.ts";
import type { BenchTicket } from "./job-times.ts";
import missingSql from "./missing-parts.sql?raw";

/** Days a delivery takes where none is known, neither as it was nor as quoted; common practice, no source. */
export const USUAL_LEAD = 14;

/** A part that an open job waits for; null where neither a day nor a delivery time is known. */
export type AwaitedPart = { readonly ticket_no: string; readonly due_on: string | null; readonly lead_days: number | null };

/** A part that is not on the shelf, and how often one kind of job needed it. */
export type MissingPart = {
  readonly interchange: string;
  readonly name: string | null;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly jobs: number;
  readonly needed: number;
  readonly due_on: string | null;
  readonly lead_days: number | null;
};

/** What the owner says beside the records. */
export interface BenchSettings {
  readonly hours: BenchHours;
  readonly closures: readonly Closure[];
  /** Minutes a reel takes beside the work, and what an hour costs, are written with the bench's rates. */
  readonly rates: BenchRates;
}

export interface BenchRecords {
  readonly season: SeasonRecords;
  readonly tickets: readonly BenchTicket[];
  readonly awaited: readonly AwaitedPart[];
  readonly missing: readonly MissingPart[];
  readonly hours: BenchHours;
  readonly rates: BenchRates;
}

/** Weeks looked ahead. */
export const WEEKS = 26;

/** All but the tickets. */
async function besideTickets(engine: Engine, as_of: string, { hours, closures, rates }: BenchSettings, signal?: AbortSignal): Promise<Omit<BenchRecords, "tickets">> {
  const days = await engine.rows<DayCount>(receivedSql, {}, signal), awaited = await engine.rows<AwaitedPart>(awaitedSql, { as_of }, signal);
  const missing = await engine.rows<MissingPart>(missingSql, { as_of, since: dayAfter(as_of, -730) }, signal);
  return { season: { days, as_of, closures, weeks: WEEKS }, awaited, missing, hours, rates };
}

/** Everything the weeks ahead are worked out from, as plain rows. */
export async function benchRecords(engine: Engine, as_of: string, settings: BenchSettings, signal?: AbortSignal): Promise<BenchRecords> {
  return { tickets: await engine.rows<BenchTicket>(ticketsSql, {}, signal), ...await besideTickets(engine, as_of, settings, signal) };
}

/** The same with the tickets packed, so that a worker and not the page makes rows of them. */
export type PackedBench = Omit<BenchRecords, "tickets"> & { readonly tickets: PackedRows<BenchTicket> };

/** The same for a worker. */
export async function packedBench(engine: Engine, as_of: string, settings: BenchSettings, signal?: AbortSignal): Promise<PackedBench> {
  return { tickets: await packedRows(engine, ticketsSql, {}, signal), ...await besideTickets(engine, as_of, settings, signal) };
}

export const unpackedBench = ({ tickets, ...rest }: PackedBench): BenchRecords => ({ tickets: unpackedRows(tickets), ...rest });
