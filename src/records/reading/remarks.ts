import type { Layout } from "./headings.ts";
import type { Mapping } from "./mapping.ts";

const SHOWN = 10;

function names(headings: readonly string[]): string {
  const shown = headings.slice(0, SHOWN).map((heading) => heading.trim().slice(0, 60)).join(", ");
  return headings.length > SHOWN ? `${shown} and ${headings.length - SHOWN} more` : shown;
}

/** What the layout of a file makes of its columns, one sentence each. */
export function layoutRemarks({ plans, left_out }: Layout, mapping: Mapping | null): string[] {
  const fields = plans.flatMap((plan) => plan.fields), remarks: string[] = [];
  if (plans.length === 2) remarks.push("Each row was read as one finding; the tickets were made from the rows with the same number.");
  if (mapping !== null) remarks.push("The headings and words of mapping.json were applied.");
  for (const { column, at, constant, heading, convert } of fields) {
    if (at === null && constant !== null) remarks.push(`${column.name} is “${constant}” in every row, as mapping.json says.`);
    if (convert === "hours to minutes") remarks.push(`${heading} was read as hours and kept as minutes.`);
    if (convert === "failed to grade") remarks.push(`${heading} was read as a grade: yes as 4 (failed), no as 0 (as new).`);
  }
  if (left_out.length > 0) {
    const tables = plans.map(({ table }) => table.name).join(" and ");
    remarks.push(`Left out: ${names(left_out)} (${tables} have no such column, or it is there twice).`);
  }
  return remarks;
}

/** Counts how often each thing was dropped or put right, and says so. */
export class Counts {
  private readonly counts = new Map<string, number>();

  add(what: string): void {
    this.counts.set(what, (this.counts.get(what) ?? 0) + 1);
  }

  of(what: string): number {
    return this.counts.get(what) ?? 0;
  }

  /** One sentence for each, with its count in front. */
  sentences(): string[] {
    return [...this.counts].map(([what, count]) => `${count} ${count === 1 ? "row" : "rows"}: ${what}.`);
  }
}

/** Why a row is dropped, as its remark says it. */
export const BLANK = "dropped as blank";
export const HEADINGS_AGAIN = "dropped as a repeat of the headings";
export const SHORT = "fewer cells than the heading row; the missing ones were read as empty";
export const GUESSED = "why the reel came in was guessed from the complaint";
