import { askBudget } from "../../answers/budget/ask-budget.ts";
import type { Budget, BudgetQuestion } from "../../answers/budget/budget.ts";
import { budgetInWorker } from "../../answers/budget/budget-in-worker.ts";
import { askReplay } from "../../answers/replay/ask-replay.ts";
import type { Replay } from "../../answers/replay/replay.ts";
import { replayInWorker } from "../../answers/replay/replay-in-worker.ts";
import type { RuleChange } from "../../answers/rule-changes/rule-changes.ts";
import type { RestockSettings } from "../../answers/stock/restock-line.ts";
import type { Engine, Report } from "../../db/engine.ts";

type Ask<T> = (signal: AbortSignal, report: Report) => Promise<T>;

/** The curve and the list for any money. */
export const askForBudget = (engine: Engine, question: BudgetQuestion, rule_changes: readonly RuleChange[]): Ask<Budget> =>
  (signal, report) => askBudget(engine, question, { signal, report, work: budgetInWorker, settings: { rule_changes } });

/** The advice tried on the shop's own past, as seldom out of a part as the owner wants. */
export const askForReplay = (engine: Engine, as_of: string, { rule_changes, targets }: Pick<RestockSettings, "rule_changes" | "targets">): Ask<Replay> =>
  (signal, report) => askReplay(engine, { as_of, rule_changes, targets }, { signal, report, work: replayInWorker });
