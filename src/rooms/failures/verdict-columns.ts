import type { ConditionsBehind } from "../../answers/failure-pages/conditions-behind.ts";
import { COST_WEIGHTS } from "../../answers/failures/besides.ts";
import type { FailureCost, SeasonSide, Verdict, VerdictSide } from "../../answers/failures/verdict.ts";
import { sideOf } from "../../answers/failures/verdict.ts";
import type { Opening } from "../../answers/filter.ts";
import { DASH, minutes, money, number } from "../../ui/format.ts";
import { likely } from "../../ui/share-words.ts";
import type { Column } from "../../ui/table-rows.ts";
import { ofWords, rawRatio, timesWords, whose } from "./verdict-words.ts";

const right = { align: "right" } as const;
const shareWords = ({ rate }: VerdictSide): string => (rate.value === null ? DASH : likely(rate.low, rate.high));

/** Columns of a list of verdicts over parts and models; figures are those of one way of coming in. */
export function watchColumns(opening: Opening, currency: string): readonly Column<Verdict>[] {
  const side = (row: Verdict) => sideOf(row, opening);
  return [
    { key: "part", label: "Part", value: (row) => row.position_name },
    { key: "model", label: "Model", value: whose },
    { key: "word", label: "Verdict", value: (row) => row.word },
    { key: "failed", label: "Failed", ...right, value: (row) => side(row).failed, text: (row) => ofWords(side(row).failed, side(row).inspected) },
    { key: "likely", label: "Likely", value: (row) => side(row).rate.low, text: (row) => shareWords(side(row)) },
    { key: "adjusted", label: "Like with like", unit: "times", value: (row) => side(row).adjusted.value, text: (row) => timesWords(side(row).adjusted) },
    { key: "cost", label: "Cost", ...right, value: (row) => row.cost.money, text: (row) => money(row.cost.money, currency) },
  ];
}

/** Columns of a series part by part: all its sizes together, then each. */
export function seriesColumns(opening: Opening, sizes: readonly string[], of: (position: string, model: string) => Verdict | null, currency: string): readonly Column<Verdict>[] {
  const side = (row: Verdict) => sideOf(row, opening), counts = (one: Verdict | null) => (one === null ? DASH : ofWords(side(one).failed, side(one).inspected));
  return [
    { key: "part", label: "Part", value: (row) => row.position_name }, { key: "word", label: "Verdict", value: (row) => row.word },
    { key: "all", label: "All sizes", ...right, value: (row) => side(row).failed, text: counts },
    ...sizes.map((size): Column<Verdict> => ({ key: size, label: size, ...right, value: (row) => { const one = of(row.position, size); return one === null ? null : side(one).failed; }, text: (row) => counts(of(row.position, size)) })),
    { key: "adjusted", label: "Like with like", unit: "times", value: (row) => side(row).adjusted.value, text: (row) => timesWords(side(row).adjusted) },
    { key: "cost", label: "Cost", ...right, value: (row) => row.cost.money, text: (row) => money(row.cost.money, currency) },
  ];
}

const CAME: Readonly<Record<Opening, string>> = { planned: "planned service", complaint: "something wrong", "*": "both" };

/** The figures of one verdict, a row for each way of coming in: as counted and like with like, beside each other. */
export const SIDE_COLUMNS: readonly Column<VerdictSide>[] = [
  { key: "opening", label: "Came in for", value: (row) => CAME[row.opening], sortable: false },
  { key: "mine", label: "This model", sortable: false, ...right, value: (row) => row.failed, text: (row) => ofWords(row.failed, row.inspected) },
  { key: "likely", label: "Likely", sortable: false, value: shareWords },
  { key: "others", label: "Other models", sortable: false, ...right, value: (row) => row.others_failed, text: (row) => ofWords(row.others_failed, row.others_inspected) },
  { key: "raw", label: "As counted", unit: "times", sortable: false, ...right, value: rawRatio, text: (row) => number(rawRatio(row), 1) },
  { key: "adjusted", label: "Like with like", unit: "times", sortable: false, value: (row) => row.adjusted.value, text: (row) => timesWords(row.adjusted) },
  { key: "compared", label: "Have a like", sortable: false, ...right, value: (row) => row.compared, text: (row) => ofWords(row.compared, row.inspected) },
  { key: "word", label: "Taken alone", sortable: false, value: (row) => row.word },
];

export const SEASON_COLUMNS: readonly Column<SeasonSide>[] = [
  { key: "season", label: "Season", value: (row) => row.season, text: (row) => String(row.season) },
  { key: "mine", label: "This model", ...right, value: (row) => row.failed, text: (row) => ofWords(row.failed, row.inspected) },
  { key: "others", label: "Other models", ...right, value: (row) => row.others_failed, text: (row) => ofWords(row.others_failed, row.others_inspected) },
  { key: "ratio", label: "Like with like", unit: "times", value: (row) => row.adjusted.value, text: (row) => timesWords(row.adjusted) },
];

/** Sets of conditions, the model beside the others under the same. */
export const CONDITION_COLUMNS: readonly Column<ConditionsBehind>[] = [
  { key: "opening", label: "Came in for", value: (row) => (row.opening === null ? null : CAME[row.opening]) },
  { key: "water", label: "Water", value: (row) => row.water },
  { key: "rinse", label: "Rinsed", value: (row) => row.rinse },
  { key: "days", label: "Days fished", value: (row) => row.days },
  { key: "sealed", label: "Body", value: (row) => row.sealed },
  { key: "mine", label: "This model", ...right, value: (row) => row.inspected, text: (row) => ofWords(row.failed, row.inspected) },
  { key: "others", label: "Other models", ...right, value: (row) => row.others_inspected, text: (row) => ofWords(row.others_failed, row.others_inspected) },
];

/** What failures cost, and what its parts are counted as, in two sentences. */
export function costSentence(cost: FailureCost, currency: string): string {
  const worth = `${money(cost.money, currency)} over these records`;
  const comebacks = cost.comebacks === 0 ? "no comeback" : `${number(cost.comebacks)} ${cost.comebacks === 1 ? "comeback" : "comebacks"}`;
  const minute = cost.minute_worth === null ? `1\u00a0${currency}, no labour charge being written` : `${number(cost.minute_worth, 2)}\u00a0${currency}, as the labour charges have it`;
  return `Its failures cost about ${worth}: ${minutes(cost.minutes)} at the bench, ${money(cost.parts, currency)} in parts, ${number(cost.waiting_days)} days of waiting, ${comebacks}. `
    + `A bench minute is counted as ${minute}, a day of waiting as ${COST_WEIGHTS.waiting_day_min} minutes, a comeback as ${COST_WEIGHTS.comeback_min}.`;
}
