import type { SpellingBook } from "../notes/own-spellings.ts";
import { conventions } from "./conventions.ts";
import { JobRows } from "./job-rows.ts";
import type { NotesRead, RowFindings } from "./row-findings.ts";
import type { RowMaker } from "./row-outcome.ts";
import type { SheetPlan } from "./sheet-plan.ts";
import { StockRows } from "./stock-rows.ts";
import { TillRows } from "./till-rows.ts";

/**
 * What makes records of the rows of a planned sheet.
 *
 * @param file name of the sheet's file
 * @param notes_read notes read before with this book; what is read is added
 * @param owner_salt the shop's own, for tags of owners; null where tags are not made
 * @throws {RangeError} for one of our own tables, whose rows are records already
 */
export function rowMaker(plan: SheetPlan, file: string, last_day: string, book: SpellingBook | null, owner_salt: string | null = null, notes_read: NotesRead = new Map()): RowMaker & { readonly findings: RowFindings } {
  const given = { plan, conventions: conventions(plan, file), last_day, book };
  if (plan.kind === "jobs") return new JobRows({ ...given, owner_salt, notes_read });
  if (plan.kind === "till") return new TillRows(given);
  if (plan.kind === "stock") return new StockRows(given);
  throw new RangeError(`rowMaker: needs a sheet of jobs, sales or stock, got ${plan.kind}`);
}
