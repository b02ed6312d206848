import type { Engine, SqlValue } from "../../db/engine.ts";
import { TABLES } from "../columns.ts";
import conflictsSql from "./conflicts.sql?raw";
import type { TicketDecision, Verdict } from "./decisions.ts";

/** One of the rows that bear a ticket number. */
export interface TicketVersion {
  readonly row_key: string;
  readonly import_no: number;
  readonly source_file: string;
  readonly source_line: number;
  /** True for the row that counts until the number is settled. */
  readonly counts: boolean;
  /** The ticket's cells by column. */
  readonly said: Readonly<Record<string, SqlValue>>;
}

/** A ticket number whose rows contradict each other. */
export interface Conflict {
  readonly ticket_no: string;
  /** The row that counts now comes first. */
  readonly versions: readonly TicketVersion[];
  /** Columns in which they differ, in the table's order. */
  readonly differs: readonly string[];
}

type Found = Omit<TicketVersion, "said"> & { read_as: string } & Readonly<Record<string, SqlValue>>;

const COLUMNS = TABLES.find(({ name }) => name === "tickets")?.columns.map(({ name }) => name) ?? [];

function versionOf(row: Found): TicketVersion {
  const { row_key, import_no, source_file, source_line, counts } = row;
  return { row_key, import_no, source_file, source_line, counts, said: Object.fromEntries(COLUMNS.map((name) => [name, row[name] ?? null])) };
}

/** A blank contradicts nothing, but it is worth seeing that one row has it. */
const differing = (versions: readonly TicketVersion[]) =>
  COLUMNS.filter((name) => new Set(versions.map(({ said }) => said[name] ?? null)).size > 1);

/** Ticket numbers that wait to be settled, by number. */
export async function conflicts(engine: Engine, signal?: AbortSignal): Promise<readonly Conflict[]> {
  const found = await engine.rows<Found>(conflictsSql, {}, signal);
  return [...new Set(found.map(({ read_as }) => read_as))].map((ticket_no) => {
    const versions = found.filter(({ read_as }) => read_as === ticket_no).map(versionOf);
    return { ticket_no, versions, differs: differing(versions) };
  });
}

/**
 * The decision that settles a conflict.
 *
 * @param row_key the row that counts; of two jobs the one that keeps the number
 * @throws {RangeError} if no row of the conflict has that key
 */
export function settlement({ ticket_no, versions }: Conflict, verdict: Verdict, row_key: string, decided_on: string): TicketDecision {
  if (!versions.some((one) => one.row_key === row_key)) throw new RangeError(`settlement: needs the key of a row of ${ticket_no}, got ${row_key}`);
  return { ticket_no, verdict, row_key, others: versions.map((one) => one.row_key).filter((key) => key !== row_key), decided_on };
}
