import { modelName } from "../model-name.ts";
import { decimal, number } from "../wording.ts";
import { explained, fairRange, looksWorse, STANDS_OUT, TOO_FEW } from "./judged.ts";
import type { Unjudged } from "./judged.ts";
import type { LeadingFault, SeasonSide, Verdict, VerdictWord } from "./verdict.ts";

/** What the sentences of one verdict are made from. */
export interface Told {
  readonly word: VerdictWord;
  readonly side: Unjudged;
  readonly all: Unjudged;
  readonly left_out: readonly string[];
  readonly widened: number;
  readonly seasons: readonly SeasonSide[];
  readonly seasons_told: number;
  readonly seasons_agree: number;
  readonly fault: LeadingFault | null;
  readonly series: boolean;
  readonly names: readonly string[];
}

/** Shares are said in per cent from so many on. */
const PERCENT_FROM = 10;

const counted = (failed: number, inspected: number): string => {
  const share = failed / inspected;
  return `${number(failed)} of ${number(inspected)}${inspected < PERCENT_FROM ? "" : ` (${share > 0 && share < 0.01 ? "under 1" : (100 * share).toFixed(0)} %)`}`;
};

/**
 * How many times as often, with one decimal.
 *
 * @example
 * times(2.04); // => "2.0 times as often"
 */
export const times = (ratio: number): string => (ratio >= 0.95 && ratio < 1.05 ? "just as often" : `${decimal(ratio, 1)} times as often`);
const between = (low: number, high: number): string => `likely ${decimal(low, 1)} to ${high > 99 ? "many" : decimal(high, 1)} times`;
const came = ({ opening }: Unjudged): string => (opening === "planned" ? "In planned services" : opening === "complaint" ? "On reels that came in with something wrong" : "In all openings");

/** How often it had failed, beside the others, as counted. */
export function ownCounts(side: Omit<Unjudged, "word">): string {
  const others = side.others_inspected === 0 ? "no other model has been inspected" : `on the other models in ${counted(side.others_failed, side.others_inspected)}`;
  return side.inspected === 0 ? `${came(side)} it was never inspected.` : `${came(side)} it had failed in ${counted(side.failed, side.inspected)}; ${others}.`;
}

function fairCounts(side: Unjudged): string {
  if (side.compared === 0) return "No other model came in under the same conditions, so nothing can be compared like with like.";
  const alike = "Among reels that live and come in alike (water, rinsing, days fished, planned or not, sealed or not)", range = fairRange(side);
  const value = side.adjusted.value ?? side.seen_over_expected.value;
  if (value === null || range === null) return `${alike} the others had no failure to compare with.`;
  const few = side.compared < 0.8 * side.inspected ? ` (only ${number(side.compared)} of its ${number(side.inspected)} have such a fellow)` : "";
  return `${alike} it fails ${times(value)}, ${between(range.low, range.high)}${few}.`;
}

function ownParts({ own_level, beyond_own, failed }: Unjudged): string {
  if (own_level === null || failed < STANDS_OUT.failed) return "";
  const level = own_level > 1.25 ? `All its parts fail about ${decimal(own_level, 1)} times as often as the others'` : own_level < 0.8
    ? "Its other parts fail less often than the others'" : "Its other parts fail about as often as the others'";
  const part = beyond_own.low !== null && beyond_own.low > 1 ? "so it is this part and not the whole reel"
    : own_level > 1.25 ? "so this may be the kind of reel, its owners or its life rather than this part" : "and this part cannot be told from them";
  return `${level}, ${part}.`;
}

function chance({ q_value, word }: { q_value: number | null; word: VerdictWord }): string {
  if (q_value === null || word !== "stands out") return "";
  const of = q_value < 0.001 ? `1 in ${number(1000)}` : `${Math.max(1, Math.ceil(100 * q_value))} in 100`;
  return `With all the looks at parts of this kind counted in, at most about ${of} findings as strong as this would be mere chance.`;
}

function seasonWords({ word, seasons_told, seasons_agree }: Told): string {
  const worse = word === "stands out" || word === "worse than most, not yet sure";
  if (seasons_told === 0 || !worse) return "";
  if (seasons_told === 1) return seasons_agree === 1 ? "Only one season says it so far: look again after the next." : "";
  return seasons_agree === seasons_told ? `Each of the ${seasons_told} seasons says so by itself.` : `${seasons_agree} of ${seasons_told} seasons say so by themselves.`;
}

function faultWords({ fault, word }: Told): string {
  if (!fault || fault.failed < 3 || word === "too few") return "";
  const others = fault.others_of === 0 ? "" : `; on the others ${number(fault.others_failed)} of ${number(fault.others_of)}`;
  return `Mostly ${fault.mode}: ${number(fault.failed)} of its ${number(fault.of)} failures${others}.`;
}

function tooFewWords({ all }: Told): string {
  const usual = all.others_inspected === 0 ? null : (all.inspected * all.others_failed) / all.others_inspected;
  if (all.inspected < TOO_FEW.inspected) return `Inspected ${number(all.inspected)} times: under ${TOO_FEW.inspected} nothing can be ranked.`;
  const expect = usual === null ? "" : `At the others' usual rate about ${number(usual)} would be expected: `;
  return `${expect}with so few, twice as many or none at all could both be chance.`;
}

function apartWords({ side, all }: Told): string {
  const { low } = fairRange(side) ?? { low: 0 };
  if (explained(side) && low > 1) return "It fails more often than the others, but so do all its parts: it cannot be told apart from how these reels live and come in.";
  const looks = looksWorse(side) ? side : looksWorse(all) ? all : null;
  if (looks) return `${came(looks)} it looks worse, but compared like with like that does not hold: it cannot be told apart from how these reels live and come in.`;
  return "Compared like with like it could be no worse or twice as bad: these records cannot decide.";
}

const FIRST: Readonly<Record<VerdictWord, (told: Told) => string>> = {
  "stands out": () => "It fails clearly more often than the others, and neither chance nor the way these reels come in explains it.",
  "worse than most, not yet sure": () => "It fails more often than the others, but not every test that guards against a false alarm is passed yet.",
  "cannot tell apart from how these reels come in": apartWords,
  "no different": () => "Nothing here says that it fails more often than the others.",
  "too few": tooFewWords,
};

/** Why a verdict says what it says, the most important sentence first. */
export function reasonsOf(told: Told): string[] {
  const { side, all, word, left_out, widened, series, names } = told;
  const only_few = word === "too few";
  return [
    FIRST[word](told),
    ownCounts(only_few ? all : side),
    only_few ? "" : fairCounts(side),
    only_few ? "" : ownParts(side),
    chance({ q_value: side.q_value, word }),
    seasonWords(told),
    faultWords(told),
    series ? `All sizes together: ${names.join(", ")}.` : "",
    left_out.length > 0 ? `${left_out.join(", ")} ${left_out.length === 1 ? "stands" : "stand"} out and ${left_out.length === 1 ? "is" : "are"} not among the others.` : "",
    widened > 1.05 ? `Some of these reels came together, so ${number(side.inspected)} inspections count like ${number(side.inspected / widened)}.` : "",
  ].filter((sentence) => sentence !== "");
}

/** Maker and model, a series with "(all sizes)". */
export const verdictName = ({ maker, model, series }: Pick<Verdict, "maker" | "model" | "series">): string =>
  `${modelName({ maker, model })}${series ? " (all sizes)" : ""}`;
