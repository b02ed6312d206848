import type { Engine } from "../../db/engine.ts";
import { packedRows } from "../../db/packed-rows.ts";
import { restock } from "../stock/restock.ts";
import type { RestockLine, RestockSettings } from "../stock/restock-line.ts";
import intakeSql from "../stock/intake.sql?raw";
import type { IntakeDay } from "../stock/order-advice.ts";
import type { PlainWork, WorkMeans } from "../worker-work.ts";
import { budgetOf } from "./budget-of.ts";
import type { Budget, BudgetGroup, BudgetQuestion, BudgetRecords } from "./budget.ts";
import { BUDGET_DEFAULTS } from "./budget.ts";
import jobPartsSql from "./job-parts.sql?raw";

export type BudgetWork = PlainWork<BudgetRecords, Budget>;

/** A line as something to buy; null where count, price or number is unknown or the line cannot be planned. */
function buyable(line: RestockLine): BudgetGroup | null {
  const { interchange, part_no, name, supplier, part_class, unit_cost, pack_qty, min_order_qty, on_hand, on_order, waiting, lead, review_days } = line;
  if (line.status === "refused" || part_no === null || on_hand === null || unit_cost === null) return null;
  return {
    interchange, part_no, name, supplier, part_class, unit_cost, pack_qty, min_order_qty, position: on_hand + on_order - waiting,
    lead_days: lead.days, lead_sd: lead.sd, review_days,
  };
}

/** What can be bought of these lines, and what had to be left out. */
export function budgetGroups(lines: readonly RestockLine[], held_up_by: BudgetQuestion["held_up_by"]): Pick<BudgetRecords, "groups" | "left_out"> {
  const all = lines.flatMap((line) => buyable(line) ?? []), counts = (group: BudgetGroup) => held_up_by === "any part" || group.part_class === "A";
  const groups = all.filter(counts).sort((a, b) => (a.interchange < b.interchange ? -1 : 1)), planned = lines.filter((line) => line.status !== "refused");
  const uncounted = planned.filter((line) => line.part_no === null || line.on_hand === null).length;
  return { groups, left_out: {
    refused: lines.length - planned.length, uncounted, unpriced: planned.length - uncounted - all.length, can_do_without: all.length - groups.length,
  } };
}

/** The stock advice's own settings, where they differ from its defaults. */
export type AdviceSettings = Partial<Omit<RestockSettings, "as_of">>;

/** Everything a budget is chosen from, nothing of it later than `as_of`. */
export async function budgetRecords(engine: Engine, question: BudgetQuestion, settings: AdviceSettings = {}, signal?: AbortSignal): Promise<BudgetRecords> {
  const { as_of } = question, { lines } = await restock(engine, { ...settings, as_of }, signal);
  const parts = await packedRows(engine, jobPartsSql, { to_date: as_of }, signal), intake = await engine.rows<IntakeDay>(intakeSql, { to_date: as_of }, signal);
  return { question, ...budgetGroups(lines, question.held_up_by), parts, intake };
}

/** How the question is worked on; `work`: where, `budgetInWorker` in the browser. */
export interface BudgetAsk extends WorkMeans { readonly settings?: AdviceSettings; readonly work?: BudgetWork }

/** What money spent on stock does for the jobs ahead. */
export async function askBudget(
  engine: Engine, question: Partial<BudgetQuestion> & Pick<BudgetQuestion, "as_of">, { work = budgetOf, settings, ...means }: BudgetAsk = {},
): Promise<Budget> {
  return work(await budgetRecords(engine, { ...BUDGET_DEFAULTS, ...question }, settings, means.signal), means);
}
