import { table, type Column } from "../columns.ts";

/** Groups' shims and photos, and what was found, are fields whose names begin so. */
const SHIMS = "shims:", FOUND = "found:";

/** Columns of a finding that the bench writes. */
export const FOUND_COLUMNS = ["grade", "mode", "action", "routine", "part_no", "qty", "note"] as const;
export type FoundColumn = (typeof FOUND_COLUMNS)[number];

/** What is asked when a reel comes in, in the order of the counter. */
export const INTAKE = [
  "ticket_no", "received_on", "model", "maker", "reel_kind", "serial", "water", "salt_days", "use_days", "rinse", "months_since_service",
  "came_in", "complaint", "job", "batch",
] as const;
/** What is asked before the ticket is finished. */
export const FINISH = ["finished_on", "outcome", "labour_min", "technician", "warranty", "parts_wait_days", "labour_charge", "parts_charge", "note"] as const;

/** The six figures that make comebacks comparable, and the unit of the scale. Common practice, no source. */
export const CHECKS = [
  { field: "check_back_turn", label: "Back-turn of the handle", unit: "degrees", how: "Hard stops in four clock positions; how far it turns back before it holds." },
  { field: "check_drag_start", label: "Drag when it starts", unit: "", how: "On a scale, ten pulls, the usual setting." },
  { field: "check_drag_run", label: "Drag while it runs", unit: "", how: "The same pulls, once the spool turns." },
  { field: "check_free_spool", label: "Free spool", unit: "seconds", how: "Spun by hand, no line; revolving spools only." },
  { field: "check_bail", label: "Bail trips in a row", unit: "times", how: "Opens and trips by the handle, up to 20; spinning reels only." },
  { field: "check_seal", label: "Seal test", unit: "", how: "Warm hand or low pressure, never under water." },
] as const;
export const DRAG_UNITS = ["kg", "lb"] as const;
export const SEAL_ANSWERS = ["passed", "failed"] as const;
export type CheckField = (typeof CHECKS)[number]["field"] | "check_drag_unit";

/** One line of findings at a position: several parts may have gone there. */
export interface FoundLine {
  readonly position: string;
  /** From 1. */
  readonly line: number;
}

export const foundField = ({ position, line }: FoundLine, column: FoundColumn): string => `${FOUND}${position}:${line}:${column}`;
export const shimsField = (group: string): string => `${SHIMS}${group}`;

/** The group whose shims a field holds, else null. */
export const shimsGroup = (field: string): string | null => (field.startsWith(SHIMS) ? field.slice(SHIMS.length) : null);

/** Which line of findings a field belongs to, else null. */
export function foundLine(field: string): FoundLine | null {
  const [, position, line] = field.startsWith(FOUND) ? field.split(":") : [];
  return position === undefined || line === undefined ? null : { position, line: Number(line) };
}

/** Check values that are figures, read as a number in the records is. */
const FIGURES = new Set<string>(["check_back_turn", "check_drag_start", "check_drag_run", "check_free_spool", "check_bail"]);

/** The column of the records that a field of a ticket becomes, or that it is read like; null for what is text of the bench alone. */
export function ticketColumn(field: string): Column | null {
  if (FIGURES.has(field)) return { name: field, kind: "number", min: 0, max: 10_000, meaning: "check value" };
  return table("tickets").columns.find(({ name }) => name === field) ?? null;
}
