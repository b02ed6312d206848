import { RowChecker, type Fault } from "../checking/row.ts";
import { table, type TableName } from "../columns.ts";
import type { NamedFile } from "../formats/sheet.ts";
import { lastDay } from "../last-day.ts";
import { layoutOf } from "../reading/headings.ts";
import type { Entries } from "./bench-store.ts";
import { CHECKS, FINISH, FOUND_COLUMNS, INTAKE, shimsGroup } from "./fields.ts";
import { foundLines } from "./found.ts";

type Cells = Readonly<Record<string, string | null>>;

/** A ticket as the records take it: what was not asked or is not known is null. */
export interface FinishedRows {
  readonly ticket: Cells;
  readonly findings: readonly Cells[];
}

const textOf = (entries: Entries, field: string): string | null => entries.get(field)?.value?.trim() || null;

function shims(entries: Entries): string | null {
  const said = [...entries].flatMap(([field, { value }]) => {
    const group = shimsGroup(field);
    return group !== null && value?.trim() ? [`${group}: ${value.trim()}`] : [];
  });
  return said.length === 0 ? null : `Shims as found: ${said.join("; ")}.`;
}

/** The check values in words, because the tickets have no columns for them. */
function checks(entries: Entries): string | null {
  const drag = textOf(entries, "check_drag_unit");
  const said = CHECKS.flatMap(({ field, label, unit }) => {
    const value = textOf(entries, field), of = field.startsWith("check_drag") ? drag ?? "" : unit;
    return value === null ? [] : [`${label.toLowerCase()} ${value}${of === "" ? "" : ` ${of}`}`];
  });
  return said.length === 0 ? null : `Checks: ${said.join(", ")}.`;
}

/** What a bench ticket becomes in the records. Shims and check values stand in the note. */
export function finishedRows(entries: Entries): FinishedRows {
  const columns = Object.fromEntries([...INTAKE, ...FINISH].map((name) => [name, textOf(entries, name)]));
  const note = [columns["note"] ?? null, shims(entries), checks(entries)].filter((part) => part !== null).join("\n") || null;
  const ticket = { ...columns, note };
  const findings = foundLines(entries).map((found) => ({
    ticket_no: columns["ticket_no"] ?? null, position: found.position, ...Object.fromEntries(FOUND_COLUMNS.map((column) => [column, found[column] ?? null])),
  }));
  return { ticket, findings };
}

/** The name under which a ticket of the bench stands among the imports. */
export const benchFileName = (ticket_no: string): string => `Bench log, ticket ${ticket_no}`;

/** The rows as a file that comes in as any other does. */
export function benchFile({ ticket, findings }: FinishedRows): NamedFile {
  const text = JSON.stringify({ tickets: [ticket], findings }, null, 1);
  return { name: benchFileName(ticket["ticket_no"] ?? ""), blob: new Blob([text], { type: "application/json" }) };
}

/** A cell that the import would send back, with the position of its finding (null: the ticket itself). */
export interface BenchFault extends Fault {
  readonly position: string | null;
}

function faultsOf(name: TableName, rows: readonly Cells[], last_day: string, reel_kind: string | null): readonly BenchFault[] {
  const headings = table(name).columns.filter(({ made }) => !made).map((column) => column.name);
  const plan = layoutOf(headings, name, null).plans.find((one) => one.table.name === name);
  if (!plan) throw new RangeError(`benchFaults: needs a plan for ${name}`);
  const checker = new RowChecker(plan, last_day);
  return rows.flatMap((row) => checker.check(headings.map((heading) => row[heading] ?? ""), reel_kind).faults.map((fault) => ({ ...fault, position: name === "findings" ? row["position"] ?? null : null })));
}

/**
 * What the import's own checks would send back; empty when the ticket can go into the records.
 *
 * @param today `YYYY-MM-DD`
 */
export function benchFaults({ ticket, findings }: FinishedRows, today: string): readonly BenchFault[] {
  const last_day = lastDay(today);
  return [...faultsOf("tickets", [ticket], last_day, null), ...faultsOf("findings", findings, last_day, ticket["reel_kind"] ?? null)];
}
