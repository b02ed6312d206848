import type { Sheet, SheetRow } from "../formats/sheet.ts";
import type { Answers, SheetAnswers } from "../understanding/answers.ts";
import { answersFor } from "../understanding/conventions.ts";
import { isSign } from "../understanding/heading-signs.ts";
import type { PlanOptions, SheetPlan } from "../understanding/sheet-plan.ts";
import { RowChecker } from "../checking/row.ts";
import { table } from "../columns.ts";
import { isKnownHeading, layoutOf } from "./headings.ts";
import type { Layout } from "./headings.ts";
import { plainHeading } from "./heading-words.ts";
import type { Mapping } from "./mapping.ts";
import { Unreadable } from "../formats/unreadable.ts";

/** How a sheet is read: as one of our tables, by what is understood of it, or not at all. */
export type SheetWay =
  | { readonly way: "table"; readonly layout: Layout; readonly heading_line: number }
  | { readonly way: "understood"; readonly plan: SheetPlan }
  | { readonly way: "left out" };

export interface WayOptions extends Omit<PlanOptions, "answers"> {
  readonly mapping: Mapping | null;
  readonly answers: Answers | null;
  /** The file has no other sheet. */
  readonly only: boolean;
}

const HEAD = 300;

const understood = () => import("./understood-way.ts");

function firstRow(head: readonly SheetRow[]): SheetRow | null {
  return head.find(({ cells }) => cells.some((cell) => cell.trim() !== "")) ?? null;
}

/** The layout as one of our tables, or why there is none. */
function tableLayout(row: SheetRow, options: WayOptions): Layout | Unreadable {
  try {
    return layoutOf(row.cells, options.file, options.mapping);
  } catch (error) {
    if (error instanceof Unreadable) return error;
    throw error;
  }
}

const isOwn = ({ plans, headings }: Layout) => {
  const names = new Set(plans.flatMap(({ table: { columns } }) => columns.map(({ name }) => plainHeading(name))));
  return headings.every((heading) => heading.trim() === "" || names.has(plainHeading(heading)));
};

/** Rows of the head that would have to be fixed. */
function faultyAsTable({ plans, headings }: Layout, rows: readonly SheetRow[], last_day: string): number {
  const [plan] = plans, checker = plan && new RowChecker(plan, last_day);
  return checker ? rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== "") && (cells.length > headings.length || checker.check(cells).faults.length > 0)).length : 0;
}

async function faultyAsUnderstood(plan: SheetPlan, rows: readonly SheetRow[], { file, last_day }: WayOptions): Promise<number> {
  const { rowMaker } = await understood(), maker = rowMaker(plan, file, last_day, null), known = new Set(table("tickets").columns.map(({ name }) => name));
  const ends = [...rows.flatMap((row) => [...maker.take(row)]), ...maker.finish()];
  return known.size === 0 ? rows.length : ends.filter(({ outcome }) => outcome.end === "to fix").length;
}

/** A table of ours with other people's headings is read as such unless its rows cannot be, and what is understood of it can. */
async function better(sheet: Sheet, layout: Layout, head: readonly SheetRow[], own: SheetAnswers | null, options: WayOptions): Promise<SheetWay> {
  const first = firstRow(head), as_table: SheetWay = { way: "table", layout, heading_line: first?.line ?? 0 };
  const rows = head.filter(({ line }) => line > (first?.line ?? 0)), faulty = faultyAsTable(layout, rows, options.last_day);
  if (layout.plans.length !== 1 || layout.plans[0]?.table.name !== "tickets" || faulty === 0) return as_table;
  const { planSheet, readableSheet } = await understood(), plan = await planSheet(sheet, { ...options, answers: own });
  return readableSheet(plan) && (await faultyAsUnderstood(plan, rows, options)) < faulty ? { way: "understood", plan } : as_table;
}

/**
 * Decides how a sheet is read.
 *
 * @throws {Unreadable} when nothing tells what its columns are
 */
export async function sheetWay(sheet: Sheet, options: WayOptions): Promise<SheetWay> {
  const own = answersFor(options.answers, sheet.name, options.only);
  if (own?.kind === "left out") return { way: "left out" };
  const head = await sheet.head(HEAD), first = firstRow(head);
  if (!first) throw new Unreadable("The file holds nothing but blank lines.");
  const layout = tableLayout(first, options), as_table = layout instanceof Unreadable || layout.missing.length > 0 ? null : layout;
  if (own && own.kind !== "table") return { way: "understood", plan: await (await understood()).planSheet(sheet, { ...options, answers: own }) };
  if (as_table && (own?.kind === "table" || isOwn(as_table) || options.mapping !== null)) return { way: "table", layout: as_table, heading_line: first.line };
  if (as_table) return better(sheet, as_table, head, own, options);
  const { planSheet, readableSheet } = await understood(), plan = options.mapping === null ? await planSheet(sheet, { ...options, answers: own }) : null;
  if (plan && readableSheet(plan) && !(layout instanceof Unreadable ? false : isOwn(layout))) return { way: "understood", plan };
  if (layout instanceof Unreadable) throw layout;
  return { way: "table", layout, heading_line: first.line };
}

/** Headings that tell where a text file's cells end: those of our tables, and those any kind of sheet is known by. */
export const knowsHeading = (mapping: Mapping | null) => (heading: string): boolean => isKnownHeading(heading, mapping) || isSign(plainHeading(heading));
