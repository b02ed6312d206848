import { dayInWords } from "../checking/date-cell.ts";
import type { Answers, DateOrder, MixedWater, RoutineChange, SheetAnswers } from "./answers.ts";
import { mainCurrency, mixedCurrencies, yearInName } from "./conventions.ts";
import { position } from "../vocabulary.ts";
import { meaningNamed, meaningsFor } from "./meanings.ts";
import { readableSheet } from "./sheet-plan.ts";
import type { SheetPlan } from "./sheet-plan.ts";
import type { Choice, Question } from "./understanding.ts";

const LEAVE_OUT: Choice = { value: "", words: "leave it out" };
const id = (plan: SheetPlan, about: string, what = "") => [plan.sheet.name ?? "", about, what].join("/");
const about = (plan: SheetPlan, rest: Omit<Question, "id" | "sheet">): Question => ({ id: id(plan, rest.about, rest.column ?? ""), sheet: plan.sheet.name, ...rest });

function dates(plan: SheetPlan): Question[] {
  const { dates: seen, currencies, answers } = plan, settled = seen.settled(currencies.has("GBP"));
  if (answers?.dates || settled.proved || seen.undecided === 0) return [];
  const [example = "3/4"] = seen.examples, [first = "", second = ""] = example.split(/[-/. ]+/);
  const inWords = (day: string, month: string) => dayInWords(`2000-${month}-${day}`).replace(" 2000", "");
  return [about(plan, {
    about: "dates", column: null, ask: `Is ${example} the ${inWords(first, second)} or the ${inWords(second, first)}?`, why: `${settled.why}.`, best: settled.best,
    choices: [{ value: "day first", words: "the day comes first" }, { value: "month first", words: "the month comes first" }],
  })];
}

function year(plan: SheetPlan, file: string): Question[] {
  const { dates: seen, answers, start, means } = plan, label = start.labels[means.indexOf("received_on")];
  if (seen.without_year === 0 || (answers?.year ?? null) !== null || seen.first_year !== null) return [];
  const named = yearInName(file, plan.sheet.name);
  const where = label === undefined || label === "" ? "" : ` in the column ${label}`;
  const why = `${seen.without_year} ${seen.without_year === 1 ? `date${where} has` : `dates${where} have`} no year${named === null ? "" : `; the name says ${named}`}.`;
  return [about(plan, { about: "year", column: null, ask: "Which year is the first of these dates in?", why, choices: [], best: named === null ? null : String(named) })];
}

function decimal(plan: SheetPlan): Question[] {
  const { comma, point } = plan.decimals;
  if (plan.answers?.decimal || comma < 3 || point < 3) return [];
  return [about(plan, {
    about: "decimal", column: null, ask: "Which sign stands before the cents?", why: `${comma} amounts have a comma there and ${point} a point.`, best: comma > point ? "comma" : "point",
    choices: [{ value: "point", words: "the point (12.50)" }, { value: "comma", words: "the comma (12,50)" }],
  })];
}

function currency(plan: SheetPlan): Question[] {
  const mixed = mixedCurrencies(plan.currencies);
  if (plan.answers?.currency || mixed.length === 0) return [];
  const counts = mixed.map((one) => `${one} ${plan.currencies.get(one) === 1 ? "once" : `${plan.currencies.get(one) ?? 0} times`}`).join(", ");
  return [about(plan, {
    about: "currency", column: null, ask: "Which currency do you reckon in?", why: `Amounts name ${counts}. Nothing is converted: rows in another currency wait in the rows to fix.`,
    choices: mixed.map((one) => ({ value: one, words: one })), best: mainCurrency(plan.currencies),
  })];
}

function mixedWater(plan: SheetPlan): Question[] {
  const { mixed_waters, answers, start, means } = plan, [example] = [...mixed_waters].sort((a, b) => b[1] - a[1]);
  if (answers?.mixed_water || !example) return [];
  const cells = [...mixed_waters.values()].reduce((sum, one) => sum + one, 0), at = means.findIndex((one) => one === "water" || one === "salt_flag");
  return [about(plan, {
    about: "water", column: start.labels[at] ?? null, ask: `Which water does “${example[0].slice(0, 60)}” count as?`,
    why: `${cells} ${cells === 1 ? "cell names" : "cells name"} several waters. Salt does the damage, so the saltiest is the safe side; left empty, such reels count with those of which nothing is known.`,
    choices: [{ value: "saltiest", words: "the saltiest that it names" }, { value: "left empty", words: "leave the water empty; the words stay in the note" }], best: "left empty",
  })];
}

const ROUTINE: readonly Choice[] = [
  { value: "as routine", words: "yes, worn or not: those count as used, not as failed" }, { value: "when worn", words: "no, only when it needs it: those count as failed" },
];

const LIKELIEST: Readonly<Record<RoutineChange, string>> = {
  "as routine": "So yes is likelier, and stands until you say otherwise.", "when worn": "That does not tell why, so no stands until you say otherwise.",
};

/** Seals that services changed without a word about a fault: whether worn or not is asked of each. */
function routine({ routine_parts, answers, sheet }: SheetPlan): Question[] {
  const said = new Set(answers?.routine_parts?.map(({ position: place }) => place)), s = (n: number) => (n === 1 ? "" : "s");
  return routine_parts.filter((one) => !said.has(one.position)).map(({ position: place, silent, pieces, worn, others, others_worn, likeliest }) => ({
    id: [sheet.name ?? "", "routine", place].join("/"), sheet: sheet.name, about: "routine", column: null, position: place, choices: ROUTINE, best: likeliest,
    ask: `When you service a reel, do you change the ${position(place).name.toLowerCase()} as a matter of routine?`,
    why: `Changed at ${silent} service${s(silent)} (${pieces} piece${s(pieces)}) without a word about what was wrong, at ${worn === 0 ? "none" : worn} with one; of ${others} other parts changed there, ${others_worn} have one. `
      + `${LIKELIEST[likeliest]} Those with a fault named failed either way.`,
  }));
}

const wordsOf = (key: string, plan: SheetPlan) => meaningNamed(key, plan.kind)?.words ?? key;

/** Columns that were guessed from their values, or could as well be another. */
function columns(plan: SheetPlan): Question[] {
  const said = new Set(plan.answers?.columns.map(({ column }) => column));
  return plan.start.labels.flatMap((label, at) => {
    const guess = plan.guesses[at], look = plan.looks[at];
    if (!guess || !look || look.filled === 0 || said.has(label) || (guess.sure !== "a guess" && guess.rival === null) || guess.means === null) return [];
    const keys = [guess.means, ...(guess.rival === null ? [] : [guess.rival])];
    return [about(plan, {
      about: "column", column: label, ask: `What stands in the column ${label}?`, why: `For example: ${look.sample.slice(0, 3).join(" · ")}. ${guess.why}.`, best: guess.means,
      choices: [...keys.map((key) => ({ value: key, words: wordsOf(key, plan) })), LEAVE_OUT],
    })];
  });
}

/** What every row needs and no column was found for. */
function missing(plan: SheetPlan): Question[] {
  if (readableSheet(plan) || plan.kind !== "jobs") return [];
  const lacks = [...(plan.means.includes("received_on") ? [] : ["received_on"]), ...(plan.means.includes("reel") || plan.means.includes("model") ? [] : ["reel"])];
  const open = plan.start.labels.filter((_, at) => plan.means[at] === null && (plan.looks[at]?.filled ?? 0) > 0);
  return lacks.map((means) => ({
    id: id(plan, "column", `for ${means}`), sheet: plan.sheet.name, about: "column", column: null, best: null,
    ask: means === "reel" ? "Which column says which reel it is?" : "Which column says when the reel came in?", why: "Without it no row can come in.",
    choices: open.map((label) => ({ value: `${label}=${means}`, words: label })),
  }));
}

function whole(plan: SheetPlan, several: boolean): Question[] {
  if (!several || plan.answers) return [];
  const best = readableSheet(plan) ? plan.kind : "left out";
  return [about(plan, {
    about: "sheet", column: null, ask: `What is the sheet ${plan.sheet.name ?? ""}?`, why: `${plan.rows} rows under ${plan.start.labels.slice(0, 6).join(", ")}.`, best,
    choices: [{ value: "jobs", words: "jobs, one row a reel" }, { value: "till", words: "a till's sales" }, { value: "stock", words: "a stock list" }, { value: "left out", words: "leave it out" }],
  })];
}

/** What a sheet does not settle by itself; the questions without a best answer first. */
export function questionsOf(plan: SheetPlan, file: string, several: boolean): Question[] {
  const all = [...whole(plan, several), ...missing(plan), ...dates(plan), ...year(plan, file), ...decimal(plan), ...currency(plan), ...mixedWater(plan), ...routine(plan), ...columns(plan)];
  return all.sort((a, b) => Number(a.best !== null) - Number(b.best !== null));
}

function withMeaning(sheet: SheetAnswers, column: string, means: string | null): SheetAnswers {
  const many = means !== null && meaningNamed(means, sheet.kind)?.many === true;
  const columns = sheet.columns.map((one) => (one.column === column ? { column, means } : !many && means !== null && one.means === means ? { ...one, means: null } : one));
  return { ...sheet, columns: columns.some((one) => one.column === column) ? columns : [...columns, { column, means }] };
}

function withRoutineChange(sheet: SheetAnswers, place: string, changed: RoutineChange): SheetAnswers {
  return { ...sheet, routine_parts: [...(sheet.routine_parts ?? []).filter((one) => one.position !== place), { position: place, changed }] };
}

function onSheet(answers: Answers, sheet: string | null, change: (one: SheetAnswers) => SheetAnswers): Answers {
  return { ...answers, sheets: answers.sheets.map((one) => (one.sheet === sheet ? change(one) : one)) };
}

/**
 * The answers with one question answered.
 *
 * @param value of one of its choices; a year as text
 * @throws {RangeError} if the question offers no such choice
 */
export function answered(answers: Answers, question: Question, value: string): Answers {
  const { about: what, column, sheet, choices } = question;
  if (choices.length > 0 && !choices.some((choice) => choice.value === value)) throw new RangeError(`answered: needs one of ${choices.map((choice) => choice.value).join(", ")}, got ${value}`);
  if (what === "year" && !/^(19|20)\d\d$/.test(value)) throw new RangeError(`answered: needs a year of four digits, got ${value}`);
  return onSheet(answers, sheet, (one) => {
    if (what === "dates") return { ...one, dates: value as DateOrder };
    if (what === "year") return { ...one, year: Number(value) };
    if (what === "decimal") return { ...one, decimal: value as "point" | "comma" };
    if (what === "currency") return { ...one, currency: value };
    if (what === "water") return { ...one, mixed_water: value as MixedWater };
    if (what === "routine") return withRoutineChange(one, question.position ?? "", value as RoutineChange);
    if (what === "sheet") return { ...one, kind: value as SheetAnswers["kind"], columns: value === one.kind ? one.columns : [] };
    const [label = "", means] = column === null ? value.split(/=(?=[^=]*$)/) : [column, value];
    return withMeaning(one, label, means === undefined || means === "" ? null : means);
  });
}

/**
 * The answers with one column taken for something else; another column that had this meaning is left out, unless several may.
 *
 * @param means a key of `meaningsFor(kind)`; null leaves the column out
 * @throws {RangeError} if a sheet of this kind has no such meaning
 */
export function withColumn(answers: Answers, sheet: string | null, column: string, means: string | null): Answers {
  return onSheet(answers, sheet, (one) => {
    if (means !== null && !meaningNamed(means, one.kind)) throw new RangeError(`withColumn: needs one of ${meaningsFor(one.kind).map(({ key }) => key).join(", ")}, got ${means}`);
    return withMeaning(one, column, means);
  });
}
