import { version } from "../../package.json";
import type { Morning } from "../answers/morning/morning.ts";
import type { RestockLine } from "../answers/stock/restock-line.ts";
import type { Reject, FileTally } from "../records/ledger/ledger.ts";
import type { Conflict } from "../records/merging/conflicts.ts";
import type { Respelt } from "../records/merging/respelt.ts";

export interface SummaryFacts {
  readonly morning: Morning;
  readonly as_of_from: "asked for" | "the newest day in the records" | "today, no ticket being there";
  readonly files: readonly FileTally[];
  readonly rejects: readonly Reject[];
  /** Ticket numbers whose rows contradict each other: each counts once, as the newest row says, until its owner settles it. */
  readonly conflicts: readonly Conflict[];
  /** Ticket numbers read otherwise than written. */
  readonly respelt: readonly Respelt[];
  readonly labour_tickets: number;
  readonly labour_set_aside: number;
}

const order = ({ part_no, interchange, order_qty, cost, reason }: RestockLine) => ({ part_no, interchange, order_qty, cost, reason });

/** Counts, days, settings, versions and the morning sheet's items, as plain data in a fixed order. */
export function summary({ morning, as_of_from, files, rejects, conflicts, respelt, ...labour }: SummaryFacts) {
  const { span, restock, slowest, most_failing, failing_positions, most_failing_opening, waiting, cautions } = morning;
  return {
    versions: { saltbench: version },
    date_range: { from: span.from, to: span.to },
    as_of: morning.as_of,
    as_of_from,
    counts: {
      tickets: span.tickets, findings: span.findings, models: span.models, parts: span.parts, orders: span.orders,
      open_tickets: span.open_tickets, tickets_with_serial: span.tickets_with_serial, rejected: rejects.length, tickets_in_conflict: conflicts.length, ticket_numbers_respelt: respelt.length, ...labour,
      unmapped_pieces: restock.unmapped_pieces,
    },
    settings: restock.settings,
    files: files.map(({ file, tables, rows_read, rows_new, rows_known, rows_to_fix, rows_dropped, unreadable, remarks }) =>
      ({ file, tables, rows_read, rows_new, rows_known, rows_to_fix, rows_dropped, unreadable, remarks })),
    conflicts: conflicts.map(({ ticket_no, differs, versions }) =>
      ({ ticket_no, differs, rows: versions.map(({ source_file, source_line, counts, said }) => ({ file: source_file, line: source_line, counts, ...Object.fromEntries(differs.map((name) => [name, said[name] ?? null])) })) })),
    ticket_numbers_respelt: respelt,
    morning: {
      to_order: restock.sheets.map(({ supplier, lines, total, min_order_value, minimum_reached }) =>
        ({ supplier, total, min_order_value, minimum_reached, lines: lines.map(order) })),
      to_order_total: restock.total,
      stock_notes: restock.notes,
      waiting,
      most_failing_opening,
      most_failing: most_failing.map(({ position, position_name, maker, model, inspected, failed, rate, rate_low, rate_high }) =>
        ({ position, position_name, maker, model, inspected, failed, rate, rate_low, rate_high })),
      failing_positions: failing_positions.map(({ position, position_name, inspected, failed, rate, rate_low, rate_high }) =>
        ({ position, position_name, inspected, failed, rate, rate_low, rate_high })),
      slowest: slowest.map(({ job, reel_kind, n, median, p80 }) => ({ job, reel_kind, n, median, p80 })),
      rows_to_fix: morning.rows_to_fix,
      cautions,
    },
  };
}
