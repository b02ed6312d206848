import type { Answers, DateOrder, MixedWater, RoutineChange, SheetAnswers } from "./answers.ts";
import type { SheetPlan } from "./sheet-plan.ts";

/** How values are written in a sheet: what was answered, else what the sheet proves, else the best guess. */
export interface Conventions {
  readonly order: DateOrder | null;
  readonly year: number | null;
  readonly decimal: "point" | "comma" | null;
  readonly currency: string | null;
  readonly mixed_water: MixedWater | null;
  /** Places whose seals are changed as a matter of routine at services. */
  readonly routine: ReadonlySet<string>;
}

/** One of two ways of writing a decimal sign is the file's when the other is rarer than this. */
const RARE = 0.2;

function decimalOf({ comma, point }: SheetPlan["decimals"]): "point" | "comma" | null {
  if (comma + point === 0) return null;
  if (comma <= RARE * point) return "point";
  return point <= RARE * comma ? "comma" : null;
}

/** The currency most amounts name; amounts that name none are taken to be in it. */
export function mainCurrency(currencies: ReadonlyMap<string, number>): string {
  let best = "", most = 0;
  for (const [currency, count] of currencies) if (currency !== "" && count > most) [best, most] = [currency, count];
  return best;
}

/** Currencies named, where amounts in several would be mixed; `` stands for amounts without one. */
export function mixedCurrencies(currencies: ReadonlyMap<string, number>): string[] {
  const named = [...currencies.keys()].filter((currency) => currency !== "");
  return named.length > 1 ? named : [];
}

const YEAR = /(?:^|\D)((?:19|20)\d\d)(?!\d)/;

/** A year in the name of the file or the sheet; null when there is none, or two. */
export function yearInName(...names: readonly (string | null)[]): number | null {
  const years = new Set(names.flatMap((name) => { const year = YEAR.exec(name ?? "")?.[1]; return year === undefined ? [] : [Number(year)]; }));
  return years.size === 1 ? [...years][0] ?? null : null;
}

/** What was said of seals, and for those nobody was asked about what is likeliest. */
function routineParts({ answers, routine_parts }: SheetPlan): { position: string; changed: RoutineChange }[] {
  const said = answers?.routine_parts ?? [];
  const open = routine_parts.filter(({ position }) => said.every((one) => one.position !== position));
  return [...said, ...open.map(({ position, likeliest }) => ({ position, changed: likeliest }))];
}

/** @param file the sheet's file, for a year in its name */
export function conventions(plan: SheetPlan, file: string): Conventions {
  const { answers, dates, currencies, sheet } = plan;
  const pounds = currencies.has("GBP");
  return {
    order: answers?.dates ?? dates.settled(pounds).best,
    year: answers?.year ?? dates.first_year ?? yearInName(file, sheet.name),
    decimal: answers?.decimal ?? decimalOf(plan.decimals),
    currency: answers?.currency ?? (mixedCurrencies(currencies).length === 0 ? null : mainCurrency(currencies)),
    mixed_water: answers?.mixed_water ?? (plan.mixed_waters.size > 0 ? "left empty" : null),
    routine: new Set(routineParts(plan).filter(({ changed }) => changed === "as routine").map(({ position }) => position)),
  };
}

/** Everything settled for a sheet as answers, so that reading with them needs no guess. */
export function completeAnswers(plan: SheetPlan, file: string): SheetAnswers {
  const { order, year, decimal, currency, mixed_water } = conventions(plan, file);
  return {
    sheet: plan.sheet.name, kind: plan.kind, columns: plan.start.labels.map((column, at) => ({ column, means: plan.means[at] ?? null })),
    dates: order, decimal, year: plan.dates.without_year > 0 ? year : plan.answers?.year ?? null, currency, mixed_water, routine_parts: routineParts(plan),
    values: plan.answers?.values ?? [], constants: plan.answers?.constants ?? [],
  };
}

/** The answers for one sheet; null when they say nothing of it. */
export function answersFor(answers: Answers | null, sheet: string | null, only: boolean): SheetAnswers | null {
  if (!answers) return null;
  return answers.sheets.find((one) => one.sheet === sheet) ?? (only && answers.sheets.length === 1 ? answers.sheets[0] ?? null : null);
}
