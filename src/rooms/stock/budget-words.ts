import type { Bought, BoughtLine } from "../../answers/budget/bought-with.ts";
import { moneyFor } from "../../answers/budget/bought-with.ts";
import type { Budget } from "../../answers/budget/budget.ts";
import type { Rush } from "../../answers/budget/rush.ts";
import type { Fared } from "../../answers/budget/followed.ts";
import { csv } from "../../ui/csv.ts";
import { count, date, FEWEST_FOR_PERCENT, money, number, percent } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

/** How long the money must last, in words. */
export const untilWords = ({ until }: Pick<Budget, "until">, locale?: string): string =>
  until === null ? "until the order after this one arrives" : `until ${date(until, locale)}`;

/** Jobs as a mean: whole from ten on, else with one decimal. */
const jobs = (mean: number, locale?: string): string => number(mean, mean < 10 ? 1 : 0, locale);

/** What the money does, against buying nothing. */
export function budgetSentence(answer: Budget, bought: Bought, currency: string, locale?: string): string {
  const [nothing] = answer.fared, lines = count(bought.lines.length, "part", "parts", locale);
  if (!nothing) return answer.notes[0] ?? "";
  const before = `About ${jobs(answer.jobs, locale)} jobs that need one of these parts lie ahead ${untilWords(answer, locale)}. Without buying anything about ${jobs(nothing.waiting, locale)} of them wait for a part`;
  if (bought.lines.length === 0) return `${before}${bought.next === null ? ": nothing on the list helps." : `; the first step costs ${money(bought.next, currency, 0, locale)}.`}`;
  return `${before}; with ${money(bought.spend, currency, 0, locale)} on ${lines} about ${jobs(bought.fared.waiting, locale)}, and nine times in ten no more than ${number(bought.fared.waiting_high, 0, locale)}.`;
}

/** What it takes for so many jobs in 100 to go straight through. */
export function sharesSentence(answer: Budget, currency: string, locale?: string): string {
  if (answer.jobs < FEWEST_FOR_PERCENT) return "";
  const [first, ...others] = [0.9, 0.95, 0.98].flatMap((share) => {
    const least = moneyFor(answer, share);
    return least === null ? [] : [{ share, words: least === 0 ? "for no money at all" : `from ${money(least, currency, 0, locale)} on` }];
  });
  if (!first) return "";
  const say = ({ share, words }: typeof first) => `${number(share * 100, 0, locale)} in 100 ${words}`;
  return `${number(first.share * 100, 0, locale)} in 100 jobs go straight through ${first.words}${others.map((one) => `, ${say(one)}`).join("")}.`;
}

/** What the busiest weeks ahead are called; the northern spring where they begin early in the year. */
export const rushName = ({ from }: Rush): string => (["01", "02", "03", "04"].includes(from.slice(5, 7)) ? "ready for spring" : "ready for the rush");

/** When the busiest weeks are, and how busy. */
export const rushSentence = ({ from, until, tickets, years, times_usual }: Rush, locale?: string): string =>
  `Your busiest thirteen weeks run from ${date(from, locale)} to ${date(until, locale)}: ${number(times_usual, 1, locale)} times the usual number of reels (${count(tickets, "ticket", "tickets", locale)} in ${count(years, "year", "years", locale)}). ` +
  "The list lasts to their end without another order.";

/** Name of a line: its part's, else its number. */
export const boughtName = ({ group }: BoughtLine): string => group.name ?? group.part_no;

/** Why a line is on the list. */
export function boughtWhy(line: BoughtLine, answer: Pick<Budget, "jobs" | "groups">, locale?: string): string {
  const others = line.with.map((name) => answer.groups.find(({ interchange }) => interchange === name)).flatMap((group) => (group ? [group.name ?? group.part_no] : []));
  const together = others.length === 0 ? "" : ` Partly it helps only together with ${others.join(" and ")}.`;
  return `Spares about ${number(line.jobs, line.jobs < 0.95 ? 2 : 1, locale)} of ${jobs(answer.jobs, locale)} jobs the wait.${together}`;
}

const right = { align: "right" } as const;

/** The list for the money. */
export const boughtColumns = (answer: Budget, currency: string): readonly Column<BoughtLine>[] => [
  { key: "name", label: "Part", wide: true, value: boughtName },
  { key: "part_no", label: "Number", value: ({ group }) => group.part_no },
  { key: "supplier", label: "Supplier", value: ({ group }) => group.supplier },
  { key: "pieces", label: "Buy", unit: "pieces", ...right, value: ({ pieces }) => pieces, text: ({ pieces }) => number(pieces) },
  { key: "cost", label: "Cost", ...right, value: ({ cost }) => cost, text: ({ cost }) => money(cost, currency, 2) },
  { key: "why", label: "Why", wide: true, sortable: false, value: (line) => boughtWhy(line, answer) },
];

/** The curve's numbers as a table. */
export const curveColumns = (currency: string): readonly Column<Fared>[] => [
  { key: "spend", label: "Spent", ...right, value: ({ spend }) => spend, text: ({ spend }) => money(spend, currency, 2) },
  { key: "jobs_without_wait", label: "Jobs that go straight through", ...right, value: (one) => one.jobs_without_wait, text: (one) => percent(one.jobs_without_wait) },
  { key: "waiting", label: "Jobs that wait", unit: "on average", ...right, value: (one) => one.waiting, text: (one) => number(one.waiting, 1) },
  { key: "waiting_high", label: "Jobs that wait", unit: "9 in 10 under", ...right, value: (one) => one.waiting_high, text: (one) => number(one.waiting_high) },
  { key: "lines_filled", label: "Parts there", unit: "of all needed", ...right, value: (one) => one.lines_filled, text: (one) => percent(one.lines_filled) },
];

/** The list as CSV, numbers unrounded. */
export const boughtFile = (answer: Budget, lines: readonly BoughtLine[]): string =>
  csv([...boughtColumns(answer, ""), { key: "unit_cost", label: "", value: ({ group }: BoughtLine) => group.unit_cost }], lines);
