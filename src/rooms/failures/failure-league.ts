import type { FailureRate } from "../../answers/failures/failure-rate.ts";
import { modelName } from "../../answers/model-name.ts";
import { countsInWords } from "../../ui/share-words.ts";
import { FEWEST_TO_RANK } from "./failure-words.ts";

/** What the address says was chosen; "" is nothing. `model` holds maker and model as one name. */
export interface Chosen {
  readonly position: string;
  readonly model: string;
}

/** Which rows a view shows, and under which heading. */
export interface League {
  readonly kind: "positions" | "models" | "parts of a model" | "one";
  readonly title: string;
  /** Part, model or both, without how they are listed. */
  readonly subject: string;
  /** Highest share first; those with too few inspected to rank last, most inspected first. */
  readonly rows: readonly FailureRate[];
  /** Name of a row in this view. */
  readonly name: (row: FailureRate) => string;
  /** The position over all models, where one position was chosen. */
  readonly all: FailureRate | null;
  /** What the rows are ordered by. */
  readonly by: "cost" | "share";
}

/** What the failures of a row cost. */
export type RowCost = (row: FailureRate) => number;

const shareOf = (row: FailureRate) => (row.inspected > 0 ? row.failed / row.inspected : 0);
const enough = (row: FailureRate) => row.inspected >= FEWEST_TO_RANK;

/** What costs most first, or highest share first; rows with too few inspected to rank follow, most inspected first. */
export function ranked(rows: readonly FailureRate[], cost: RowCost = shareOf): readonly FailureRate[] {
  return [...rows].sort((a, b) =>
    Number(enough(b)) - Number(enough(a)) || (enough(a) ? cost(b) - cost(a) : 0) || b.inspected - a.inspected);
}

/** True for the row that holds all models of a position. */
export const allModels = (row: FailureRate): boolean => row.model === "*";

/**
 * The view for what was chosen: nothing, a position, a model, or both. Rows without any inspection are left out.
 *
 * @param cost orders the rows by what their failures cost; without it by share
 */
export function league(rates: readonly FailureRate[], { position, model }: Chosen, cost?: RowCost): League {
  const seen = rates.filter((row) => row.inspected > 0);
  const all = seen.find((row) => allModels(row) && row.position === position) ?? null;
  const part = all?.position_name ?? rates.find((row) => row.position === position)?.position_name ?? position;
  const of = (keep: (row: FailureRate) => boolean) => ranked(seen.filter(keep), cost), by = cost ? "cost" : "share";
  if (position !== "" && model !== "") {
    const rows = of((row) => row.position === position && modelName(row) === model);
    return { kind: "one", title: `${part} on ${model}`, subject: `${part} on ${model}`, rows, name: modelName, all, by };
  }
  if (position !== "") {
    const rows = of((row) => row.position === position && !allModels(row));
    return { kind: "models", title: `${part}, model by model`, subject: part, rows, name: modelName, all, by };
  }
  const name = (row: FailureRate) => row.position_name;
  if (model !== "") {
    return { kind: "parts of a model", title: `${model}, part by part`, subject: model, rows: of((row) => modelName(row) === model), name, all: null, by };
  }
  return { kind: "positions", title: cost ? "The parts whose failures cost most, all models" : "The parts that fail most, all models", subject: "All models", rows: of(allModels), name, all: null, by };
}

/** One or two sentences that say what the view shows. */
export function leagueSentence(shown: League, locale?: string): string {
  const [first, second] = shown.rows.filter(enough), one = shown.rows[0];
  const together = shown.all === null ? "" : ` All models together: ${countsInWords(shown.all, locale)}.`;
  if (shown.kind === "one") {
    return one ? `Had failed in ${countsInWords(one, locale)}.${together}` : `Never inspected here.${together}`;
  }
  if (!first) return `Nothing here was inspected ${FEWEST_TO_RANK} times, too few to rank.${together}`;
  const alike = shown.kind === "models" && shown.rows.some((row) => row.note.includes("no difference between models"))
    ? " No difference between the models can be told from chance." : "";
  const then = second ? `, then ${lower(shown.name(second), shown)} (${countsInWords(second, locale)})` : "";
  return `${shown.by === "cost" ? "Costs most" : "Most often failed"}: ${lower(shown.name(first), shown)} (${countsInWords(first, locale)})${then}.${together}${alike}`;
}

/** Part names start small inside a sentence; names of models stay as they are. */
function lower(name: string, shown: League): string {
  return shown.kind === "models" ? name : name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());
}

/** Rows drawn at once; the rest stands in the table. */
export const MOST_DRAWN = 16;

/** The first rows of a view among `drawn`, in the view's order: one row for each, or two where openings are drawn apart. */
export function drawnRows(shown: League, drawn: readonly FailureRate[]): readonly FailureRate[] {
  return shown.rows.slice(0, MOST_DRAWN).flatMap((row) =>
    drawn.filter((one) => one.position === row.position && one.maker === row.maker && one.model === row.model && one.inspected > 0));
}
