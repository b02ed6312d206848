import { looksWorse } from "../failures/judged.ts";
import { ownCounts, times } from "../failures/reasons.ts";
import { sideOf } from "../failures/verdict.ts";
import type { Verdict } from "../failures/verdict.ts";
import { number, pieces } from "../wording.ts";
import { listed, small } from "./page-words.ts";

/** Whether to warn customers of a model, as one says it at the counter. */
export interface ModelAdvice {
  readonly answer: "yes" | "not yet" | "no" | "cannot say";
  /** The answer with its part, in one sentence. */
  readonly advice: string;
  /** Why, the weightiest first, with counts; words of the shop. */
  readonly because: readonly string[];
  /** What to do when such a reel comes in, in one sentence; "" when there is nothing. */
  readonly then: string;
}

const decided = (verdict: Verdict) => sideOf(verdict, verdict.decided_on);
const partsOf = (list: readonly Verdict[]): string => listed([...new Set(list.map((one) => small(one.position_name)))]);
/** Sentences on one verdict that a page has room for above everything else: counts, like with like, its other parts, seasons. */
const REASONS = 5;

/** One further part in a line. */
const also = (verdict: Verdict): string => `${verdict.position_name}: ${ownCounts(decided(verdict))}`;

function warned(name: string, out: readonly Verdict[], worse: readonly Verdict[]): ModelAdvice {
  const [first, ...more] = out as [Verdict, ...Verdict[]], { adjusted } = decided(first), parts = partsOf(out);
  const often = adjusted.value === null || out.length > 1 ? "" : `: ${times(adjusted.value)} as on reels used alike`;
  const doubtful = worse.length === 0 ? [] : [`Not yet sure: the ${partsOf(worse)}.`];
  return {
    answer: "yes", advice: `Yes, warn customers. The ${parts} of the ${name} ${out.length === 1 ? "fails" : "fail"} clearly more often than on other models${often}.`,
    because: [...first.reasons.slice(1, 1 + REASONS), ...more.map(also), ...doubtful],
    then: `When a ${name} comes in, look at the ${parts} whatever the job is, and tell the customer before it fails.`,
  };
}

function notYet(name: string, worse: readonly Verdict[]): ModelAdvice {
  const [first, ...more] = worse as [Verdict, ...Verdict[]], parts = partsOf(worse);
  return {
    answer: "not yet", advice: `Not yet. The ${parts} of the ${name} may fail more often than on other models, but chance or hard use could still be all there is to it.`,
    because: [...first.reasons.slice(1, 1 + REASONS), ...more.map(also)],
    then: `Look at the ${parts} when a ${name} comes in and write down what you find, the sound ones too; after the next season these records will say more.`,
  };
}

/** The part that looks worst before anything is taken into account, and why that does not count. */
function looksBad(verdicts: readonly Verdict[]): string[] {
  const bad = verdicts.filter((one) => one.word !== "too few" && (looksWorse(decided(one)) || looksWorse(sideOf(one, "*")))), [first] = bad.sort((a, b) => b.cost.money - a.cost.money);
  if (!first) return [];
  const side = looksWorse(decided(first)) ? decided(first) : sideOf(first, "*");
  return [`What looks worst is the ${small(first.position_name)}. ${ownCounts(side)} ${first.reasons[0] ?? ""}`, ...first.reasons.filter((reason) => reason.startsWith("Mostly "))];
}

function noWarning(name: string, verdicts: readonly Verdict[]): ModelAdvice {
  const told = verdicts.filter(({ word }) => word !== "too few"), apart = told.filter(({ word }) => word === "cannot tell apart from how these reels come in");
  const most = Math.max(0, ...verdicts.map((one) => sideOf(one, "*").inspected)), few = verdicts.length - told.length;
  if (told.length <= few) {
    const sound = told.length === 0 ? "" : ` Of the other ${number(told.length)} none is known to fail more often than chance and use would make it.`;
    const because = `No part of it was looked at more than ${pieces(most, "time")}. For ${number(few)} of its ${pieces(verdicts.length, "part")} that is too few: twice as many failures as usual, or none at all, could both be chance.${sound}`;
    return { answer: "cannot say", advice: `Cannot say: too few ${name} have been opened here.`, because: [because], then: "" };
  }
  const sound = told.length - apart.length, of = few === 0 ? "" : ` Of ${pieces(few, "further part")} too few were seen.`;
  const undecided = apart.length === 0 || sound === 0 ? "" : ` For the ${apart.length === 1 ? "other one" : `other ${number(apart.length)}`} these records cannot tell a weak part from salt, care or the way these reels come in.`;
  const seen = sound > 0 ? `Of the ${pieces(told.length, "part")} seen often enough, ${number(sound)} ${sound === 1 ? "fails" : "fail"} no more often than on other models.`
    : `For ${told.length === 1 ? "the one part" : `all ${number(told.length)} parts`} seen often enough these records cannot tell a weak part from salt, care or the way these reels come in.`;
  return {
    answer: "no", advice: `No, there is nothing to warn of yet. Nothing shows that a part of the ${name} is weaker than on other models.`,
    because: [`${seen}${undecided}${of}`, ...looksBad(told)], then: "",
  };
}

/**
 * Whether to warn customers of a model or series, and why.
 *
 * @param name maker and model
 * @param verdicts of its parts, those of its series included; dearest of the worst words first
 */
export function modelAdvice(name: string, verdicts: readonly Verdict[]): ModelAdvice {
  const out = verdicts.filter(({ word }) => word === "stands out"), worse = verdicts.filter(({ word, position }) => word === "worse than most, not yet sure" && !out.some((one) => one.position === position));
  if (out.length > 0) return warned(name, out, worse);
  return worse.length > 0 ? notYet(name, worse) : noWarning(name, verdicts);
}
