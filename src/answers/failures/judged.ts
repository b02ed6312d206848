import type { VerdictSide, VerdictWord } from "./verdict.ts";

/**
 * When a model stands out: at least this many failures, an honest ratio at least this far over the others, a share of false
 * alarms below this, and at least this many other models to know what is usual.
 */
export const STANDS_OUT = { failed: 5, times: 1.25, q: 0.05, models: 3 } as const;
/** Under so many inspected, or so many failures to expect, nothing is said. */
export const TOO_FEW = { inspected: 20, expected: 5 } as const;
/** What is exactly enough must not fail by the last digit of a product. */
const ROUNDING = 1e-9;
/** Twice as often is what would matter; a range that holds once and twice cannot decide. */
const MATTERS = 2;

/** All that one side says for itself. */
export type Unjudged = Omit<VerdictSide, "word">;

/** Failures if the peer failed as the others do, conditions aside. */
const usual = (side: Unjudged): number => (side.others_share === null ? 0 : side.inspected * side.others_share);

/** Whether there is too little to say anything, whichever way the reels came in. */
export function tooFew(all: Unjudged): boolean {
  return all.inspected < TOO_FEW.inspected || usual(all) < TOO_FEW.expected - ROUNDING;
}

/** Plain share above the others', before anything is taken into account. */
export const looksWorse = (side: Unjudged): boolean =>
  side.p_value !== null && side.p_value < 0.05 && side.failed > usual(side);

/** Every condition that has to hold before a model is said to stand out. */
export function standsOut(side: Unjudged): boolean {
  return side.failed >= STANDS_OUT.failed
    && side.others_models >= STANDS_OUT.models
    && looksWorse(side)
    && side.q_value !== null && side.q_value < STANDS_OUT.q
    && side.shrunken_ratio.low !== null && side.shrunken_ratio.low > STANDS_OUT.times
    && side.adjusted.low !== null && side.adjusted.low > 1
    && side.beyond_own.low !== null && side.beyond_own.low > 1 && side.beyond_q !== null && side.beyond_q < STANDS_OUT.q;
}

/** The like-with-like range; where one side has no failure, that of seen over expected. */
export function fairRange({ adjusted, seen_over_expected }: Pick<VerdictSide, "adjusted" | "seen_over_expected">): { low: number; high: number } | null {
  const { low, high } = adjusted.low !== null ? adjusted : seen_over_expected;
  return low === null || high === null ? null : { low, high };
}

/** From this general level on a model's parts all fail more often, and a part of it has to go beyond that to be blamed itself. */
const LEVEL_TELLS = 1.25;

/** Whether the model's general level (its price, its owners, its life) may be all there is to it. */
export const explained = ({ own_level, beyond_own }: Pick<VerdictSide, "own_level" | "beyond_own">): boolean =>
  own_level !== null && own_level > LEVEL_TELLS && (beyond_own.low === null || beyond_own.low <= 1);

/** The fuller record of all openings says it too, within the same ways of coming in. */
const saidByAll = (all: Unjudged): boolean => looksWorse(all) && all.failed >= STANDS_OUT.failed && all.adjusted.low !== null && all.adjusted.low > 1 && !explained(all);

/**
 * The word for one side.
 *
 * @param all the side of all openings, for whether there is enough
 * @param more other evidence that agrees (seasons, one leading fault): it lifts a range that cannot decide one word up
 * @param may_stand_out only planned openings may: a reel that was brought in by its fault was chosen by it
 */
export function wordOf(side: Unjudged, all: Unjudged, more: boolean, may_stand_out: boolean): VerdictWord {
  if (standsOut(side) && may_stand_out) return "stands out";
  if (tooFew(all)) return "too few";
  const range = fairRange(side), enough = side.failed >= STANDS_OUT.failed && !explained(side);
  if (range === null) return "cannot tell apart from how these reels come in";
  if (range.low > 1 && enough) return "worse than most, not yet sure";
  const undecided = range.low > 1 || range.high >= MATTERS || looksWorse(side) || looksWorse(all), leaning = (side.adjusted.value ?? 0) > STANDS_OUT.times;
  if (undecided && enough && leaning && (more || saidByAll(all))) return "worse than most, not yet sure";
  return undecided ? "cannot tell apart from how these reels come in" : "no different";
}
