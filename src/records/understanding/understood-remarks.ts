import type { DateOrder } from "./answers.ts";
import { numberedDay, provedOrder } from "./cells/day.ts";
import { conventions } from "./conventions.ts";
import { meaningNamed } from "./meanings.ts";
import { questionsOf } from "./questions.ts";
import type { SheetPlan } from "./sheet-plan.ts";

const SHOWN = 12;

/** With no order settled, every day that proves one speaks against the other. */
function speaksAgainst(value: string, order: DateOrder | null): boolean {
  const parts = numberedDay(value, "9999-12-31");
  return order === null || (parts !== null && provedOrder(parts) !== order);
}

/** How a sheet was read, one sentence each: what its columns were taken for, how its dates stand, what was left out. */
export function understoodRemarks(plan: SheetPlan, file: string): string[] {
  const { kind, start, means, dates, currencies } = plan, remarks: string[] = [], { order, year } = conventions(plan, file);
  const taken = start.labels.flatMap((label, at) => {
    const meaning = means[at] ? meaningNamed(means[at], kind) : null;
    return meaning ? [`${label}: ${meaning.key}`] : [];
  });
  const left = start.labels.filter((label, at) => !means[at] && (plan.looks[at]?.filled ?? 0) > 0 && label !== "");
  remarks.push(`The columns were taken so: ${taken.join(", ")}.`);
  if (left.length > 0) remarks.push(`Left out: ${left.slice(0, SHOWN).join(", ")}${left.length > SHOWN ? ` and ${left.length - SHOWN} more` : ""}.`);
  const seen = dates.settled(currencies.has("GBP"));
  if (dates.numbered > 0) remarks.push(order === null ? `Whether day or month comes first is open: ${seen.why}.` : `Dates were read ${order}${plan.answers?.dates ? ", as you said" : `: ${seen.why}`}.`);
  for (const { line, value } of seen.against.filter((one) => speaksAgainst(one.value, order))) remarks.push(`Line ${line}: the date ${value} speaks against it.`);
  if (dates.without_year > 0 && year !== null) remarks.push(`Dates without a year were read as ${year} and on.`);
  for (const { ask, why: reason, best } of questionsOf(plan, file, false)) {
    remarks.push(`Nobody was asked: ${ask} ${reason} ${best === null ? "Nothing was taken, so rows that need it are to fix." : `Taken: ${best}.`}`);
  }
  return remarks;
}
