import { grouped } from "../src/answers/grouped.ts";
import { conditionFit, effectsOf } from "../src/answers/wear/effects.ts";
import { placeOf } from "../src/answers/wear/all-wear.ts";
import { ALL_WEAR, wearRecords } from "../src/answers/wear/wear-records.ts";
import type { WearLine, WearRecords } from "../src/answers/wear/wear-records.ts";
import { groupRows } from "../src/answers/wear/wear-page.ts";
import type { WearEffect } from "../src/answers/wear/wear.ts";
import { rinseChart, rinseRows } from "../src/rooms/wear/rinse-chart.ts";
import { lifeAt, timeRatio } from "../src/stats/life-figures.ts";
import type { LifeLine } from "../src/stats/life-lines.ts";
import { hasCurve, weibullLife } from "../src/stats/weibull-life.ts";
import { readCase } from "../tests/reference/read-case.ts";
import type { Demo } from "./binding/demo.ts";
import { BOARD, picture, sources, table, text, told } from "./binding/pieces.ts";
import type { Piece } from "./binding/pieces.ts";
import { rangesChart } from "./binding/ranges-chart.ts";
import type { Ranged } from "./binding/ranges-chart.ts";

/** What does rinsing buy? How many days of a rinsed reel wear a part as much as one day of a reel never, or sometimes, rinsed. */
const FEWEST_FAILED = 20, TRUTH = 2, POSITION = "line_roller_bearing";

interface Part { readonly name: string; readonly failed: number; readonly never: WearEffect | undefined; readonly sometimes: WearEffect | undefined }

function partsOf({ lines, places }: WearRecords): Part[] {
  return [...grouped(lines, ({ position }) => position)].flatMap(([position, some]) => {
    const fit = conditionFit(some), effects = effectsOf(some, fit, position), of = (level: string) => effects.find((effect) => effect.condition === "rinse" && effect.level === level);
    return fit.fit && fit.fit.failed >= FEWEST_FAILED ? [{ name: placeOf(places, position).name, failed: fit.fit.failed, never: of("never"), sometimes: of("sometimes") }] : [];
  }).sort((one, other) => other.failed - one.failed);
}

const cell = (effect: WearEffect | undefined) => {
  const ratio = effect?.time_ratio;
  return !ratio || ratio.value === null ? "–" : `${ratio.value.toFixed(2)} (${ratio.low?.toFixed(2) ?? "open"} to ${ratio.high?.toFixed(2) ?? "open"})`;
};

const ranged = ({ name, never, failed }: Part): Ranged[] => {
  const ratio = never?.time_ratio;
  return !ratio || ratio.value === null ? [] : [{ name, value: ratio.value, low: ratio.low, high: ratio.high, counts: `${failed} failed` }];
};

/** Two treatments of one illness, each patient examined from time to time: the same question with other people's data. */
function trial(): { ratio: Ranged; halves: Ranged[] } {
  const lines = readCase("04-life-data/interval-breast-retraction").rows.map(({ group, lo, hi, count }): LifeLine =>
    ({ low: Number(lo), high: hi === "" ? Infinity : Number(hi), count: Number(count), x: [Number(group === "RCT")] }));
  const fit = weibullLife(lines);
  if (!hasCurve(fit)) throw new RangeError(`rinsing: needs a curve for the trial, got ${fit.status}`);
  const counts = (of: number) => { const some = lines.filter(({ x }) => x?.[0] === of), sum = (list: readonly LifeLine[]) => list.reduce((total, { count = 1 }) => total + count, 0); return `${sum(some.filter(({ high }) => high < Infinity))} of ${sum(some)}`; };
  return { ratio: { name: "with chemotherapy", ...timeRatio(fit, 0), counts: `${fit.failed} of ${fit.n}` }, halves: [{ name: "radiotherapy alone", ...lifeAt(fit, 0.5, [0]), counts: counts(0) }, { name: "with chemotherapy", ...lifeAt(fit, 0.5, [1]), counts: counts(1) }] };
}

function habits(lines: readonly WearLine[], { places }: WearRecords): SVGElement | HTMLElement | null {
  return rinseChart(rinseRows(groupRows(lines.filter(({ position }) => position === POSITION), { position: POSITION, places, filter: ALL_WEAR })), BOARD);
}

const numbers = ({ value, low, high }: Ranged) => `${value.toFixed(2)} (${low?.toFixed(2) ?? "open"} to ${high?.toFixed(2) ?? "open"})`;

export async function notebook(demo: Demo): Promise<readonly Piece[]> {
  const records = await wearRecords(await demo.engine(), ALL_WEAR, { position: null, conditions: true }), parts = partsOf(records), shown = parts.flatMap(ranged), { ratio, halves } = trial();
  const held = shown.filter(({ low, high }) => (low ?? 0) <= TRUTH && (high ?? Infinity) >= TRUTH).length;
  return [
    text("# What does rinsing buy?", "", "First as a customer hears it: the days in salt by which one line roller bearing in ten has failed, by what its owner does after fishing."),
    picture("Line roller bearings by rinsing", "Salt days until one in ten has failed, for reels never, sometimes and always rinsed, with the range and the counts.", habits(records.lines, records)),
    text("## Part by part, with all else alike", "",
      "Owners who rinse may also fish less, or in other water, or with better reels. So each part is fitted with rinsing, water, price class and sealing together, and the figure is",
      `how many days of a reel always rinsed wear it as much as one day of a reel that is not. Parts with at least ${FEWEST_FAILED} failures, ranges of 95 %.`),
    table(["part", "failed:", "never rinsed:", "sometimes rinsed:"], parts.map(({ name, failed, never, sometimes }) => [name, String(failed), cell(never), cell(sometimes)])),
    picture("How much faster a part of a reel never rinsed wears", `Times as fast as on a reel always rinsed, with the range, for ${shown.length} parts, beside the truth for parts that salt harms.`,
      rangesChart({ rows: shown, axis: "times as fast as always rinsed", beside: { at: TRUTH, name: "the truth where salt harms" } }, BOARD)),
    text(`The shop was made with 2.0 and 1.4 for every part that salt harms, and 1 for the others. ${held} of the ${shown.length} ranges hold 2.0; those of parts that salt leaves alone should not. About one range in twenty misses by chance alone, and with so many`,
      "parts some will. It is what went together in one shop's records, never a promise to a customer: the slip says *so far* and gives the range."),
    text("## The same method on published data", "",
      "94 patients had radiotherapy, 48 of them with chemotherapy as well, and were examined from time to time for a change in the breast's shape. The study asked what the chemotherapy does to",
      `the time until it comes. With chemotherapy a month counts like ${numbers(ratio)} months without; the study, which assumed no curve, found the difference beyond chance too.`),
    picture("Months until half had the change", "Month by which half of the patients had the change, with the range, for each treatment.", rangesChart({ rows: halves, axis: "months until half had it" }, BOARD)),
    sources(
      "Times as fast (accelerated life) with failures known between two looks: Meeker & Escobar (1998), Statistical Methods for Reliability Data, ch. 17; `src/stats/weibull-life.ts`. Ranges by profile likelihood: Cox & Oakes (1984), Analysis of Survival Data; `src/stats/life-figures.ts`.",
      "The patients: Finkelstein & Wolfe (1985) and Finkelstein (1986), Biometrics 41:933–945 and 42:845–854; list cancer of the R package npsurv; `tests/reference/04-life-data/interval-breast-retraction`. That the study found the difference beyond chance is from memory."),
  ];
}

export const main = (): Promise<number> => told(notebook);
