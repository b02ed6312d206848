import type { BenchTicket, Entries } from "../../records/bench-log/bench-store.ts";
import { CHECKS, INTAKE } from "../../records/bench-log/fields.ts";
import { foundLines, isFine, type Found } from "../../records/bench-log/found.ts";
import type { BenchFault } from "../../records/bench-log/finished-rows.ts";
import { positions } from "../../records/vocabulary-tables.ts";
import { count } from "../../ui/format.ts";
import type { AskedGroup } from "./asked-groups.ts";

/** What a field is called on the screen. */
export const LABELS: Readonly<Record<string, string>> = {
  ticket_no: "Ticket number", received_on: "Came in on", model: "Model, with its size", maker: "Maker", reel_kind: "Kind of reel", serial: "Serial number, or a tag of yours",
  water: "Fished in", salt_days: "Days in salt since the service", use_days: "Days fished in all since then", rinse: "Rinsed after use",
  months_since_service: "Months since service, or new", came_in: "Came in for", complaint: "What the customer says", job: "Job", batch: "Batch, if several came together",
  finished_on: "Finished on", outcome: "How it ended", labour_min: "Minutes at the bench", technician: "Technician", warranty: "Under warranty",
  parts_wait_days: "Days it waited for parts", labour_charge: "Charged for labour", parts_charge: "Charged for parts", note: "Note",
  check_drag_unit: "Unit of the scale", qty: "Pieces", grade: "Grade", action: "Done", mode: "What is wrong", part_no: "Part", routine: "Why", ...Object.fromEntries(CHECKS.map(({ field, label }) => [field, label])),
};

export const HINTS: Readonly<Record<string, string>> = {
  ticket_no: "Proposed in your way of numbering; write over it as you like.",
  serial: "Links the visits of one reel. Never a person’s name.",
  salt_days: "Salt or brackish water. The customer’s guess is good enough.",
  came_in: "Left unknown, it is guessed from what the customer says, and marked as guessed.",
  job: "Decides which parts are asked for at the bench.",
  batch: "Such as charter or club and the month; batch mates are not counted as separate proof.",
  months_since_service: "Left unknown, it is worked out from the visit before where the serial is known.",
  outcome: "“waiting” keeps the ticket open in the records.",
  labour_min: "Work, not waiting.",
};

const NAMES: ReadonlyMap<string, string> = new Map(positions.map(({ position, name }) => [position, name]));
export const positionName = (position: string): string => NAMES.get(position) ?? position;
const written = (entries: Entries, field: string): string => entries.get(field)?.value?.trim() ?? "";

/**
 * A ticket as the list calls it.
 *
 * @example
 * ticketTitle(new Map([["ticket_no", { value: "R-7", revision: 1 }]])) // => "R-7, model not written"
 */
export function ticketTitle(entries: Entries): string {
  const reel = `${written(entries, "maker")} ${written(entries, "model")}`.trim();
  return `${written(entries, "ticket_no") || "No number"}, ${reel || "model not written"}`;
}

const ACTION_WORDS: Readonly<Record<string, string>> = { left: "left as it is", wanted: "wanted, not in stock" };

/** One line of findings in words, such as "grade 3, pitted, replaced: 1 × BRG-4x7x2.5". */
export function foundWords(found: Found): string {
  if (isFine(found)) return "fine";
  const action = found.action === undefined ? [] : [`${ACTION_WORDS[found.action] ?? found.action}${found.routine === "yes" ? " as routine" : ""}`];
  const part = found.part_no === undefined ? [] : [`${found.qty === undefined ? "" : `${found.qty} × `}${found.part_no}`];
  const pieces = found.part_no === undefined && found.qty !== undefined ? [`${found.qty} pieces`] : [];
  return [...(found.grade === undefined ? [] : [`grade ${found.grade}`]), ...(found.mode === undefined ? [] : [found.mode]), ...action, ...part, ...pieces,
    ...(found.note === undefined ? [] : [`“${found.note}”`])].join(", ");
}

/** How far a group is: what is written of what is asked. */
export function groupWords({ asked, besides }: AskedGroup, entries: Entries): string {
  const lines = foundLines(entries), at = (position: string) => lines.filter((line) => line.position === position);
  const done = asked.filter(({ position }) => at(position).length > 0), more = besides.filter(({ position }) => at(position).length > 0);
  const bad = [...asked, ...besides].filter(({ position }) => at(position).some((line) => !isFine(line)));
  if (done.length + more.length === 0) return asked.length === 0 ? "nothing to look at for this job" : `${count(asked.length, "part", "parts")}, nothing written`;
  const of = asked.length === 0 ? count(more.length, "part", "parts") : `${done.length} of ${asked.length}${more.length > 0 ? ` and ${more.length} more` : ""}`;
  return `${of} written, ${bad.length === 0 ? "all fine" : `${bad.length} not just fine`}`;
}

/** How many questions of the counter were never asked. "Not known" is an answer. */
export const unasked = (entries: Entries): readonly string[] => INTAKE.filter((field) => !entries.has(field));

/** What stands in the way, one sentence each. */
export const faultWords = (faults: readonly BenchFault[]): readonly string[] =>
  faults.map(({ column, position, reason }) => `${position === null ? "" : `${positionName(position)}: `}${LABELS[column] ?? column}: ${reason === `${column} is empty` ? "nothing is written yet" : reason}.`);

/** Newest first. */
export const newestFirst = (tickets: readonly BenchTicket[], finished: boolean): readonly BenchTicket[] =>
  tickets.filter(({ finished_at }) => (finished_at !== null) === finished)
    .sort((a, b) => ((finished ? a.finished_at ?? "" : a.begun_at) < (finished ? b.finished_at ?? "" : b.begun_at) ? 1 : -1));

/** Whether what was written is safe. */
export function savedWords(saved: boolean, kept: boolean): string {
  if (!kept) return "This window keeps nothing: the ticket is gone when you close it.";
  return saved ? "Everything is saved on this computer as you go." : "Saving …";
}
