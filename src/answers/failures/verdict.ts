import type { Denominator, Opening } from "../filter.ts";

/** What can honestly be said of a part on a model beside the other models; strongest first. */
export const VERDICT_WORDS = [
  "stands out", "worse than most, not yet sure", "cannot tell apart from how these reels come in", "no different", "too few",
] as const;
export type VerdictWord = (typeof VERDICT_WORDS)[number];

/** A figure with the range in which its true value plausibly lies (95 %); null where it cannot be had. */
export interface Figure {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

export const NO_FIGURE: Figure = { value: null, low: null, high: null };

/** One way of coming in, of one part on one model. Shares are 0…1, ratios 1 for "as often as the others". */
export interface VerdictSide {
  readonly opening: Opening;
  readonly inspected: number;
  readonly failed: number;
  /** Share failed; null under ten inspected. Its limits are widened for reels that came together. */
  readonly rate: Figure;
  /** Drawn toward the other models by as much as thin data deserve. */
  readonly pooled: Figure;
  /** The others it is compared with: all other models, without those left out (see `Verdict.left_out`). */
  readonly others_inspected: number;
  readonly others_failed: number;
  readonly others_models: number;
  /** The others' share; where several shops are pooled, as it would be if the others had come to each shop as often as this model. */
  readonly others_share: number | null;
  /** How many times fewer reels the inspections are worth because some came together; 1 when none did. */
  readonly widened: number;
  /** Drawn-in share of this model over the plain share of the others. */
  readonly shrunken_ratio: Figure;
  /** Like with like (Mantel–Haenszel): within the same shop, water, rinse, days fished, way of coming in, and sealed or not. */
  readonly adjusted: Figure;
  /** Inspections that have a like among the others; the rest cannot be compared. */
  readonly compared: number;
  /** Failures to expect if the others' rates held within the same conditions, and seen over expected (exact mid-p). */
  readonly expected: number | null;
  readonly seen_over_expected: Figure;
  /** How many times as often the model's other parts fail as the others' do, like with like: the model's general level. */
  readonly own_level: number | null;
  /** The adjusted ratio over that general level: what is left for this part. */
  readonly beyond_own: Figure;
  readonly p_value: number | null;
  /** `p_value` corrected for the many looks within the family of parts. */
  readonly q_value: number | null;
  readonly beyond_q: number | null;
  readonly word: VerdictWord;
}

/** One season (calendar year) of planned openings. */
export interface SeasonSide {
  readonly season: number;
  readonly inspected: number;
  readonly failed: number;
  readonly others_inspected: number;
  readonly others_failed: number;
  /** Like with like within the season, by the same conditions as the verdict; null where either side has no failure. */
  readonly adjusted: Figure;
  /** Inspections that have a like among the others of that season. */
  readonly compared: number;
}

/** What the failures of a part on a model cost, over the records looked at. */
export interface FailureCost {
  /** Bench minutes written for the part, or its share of a job that came in with something wrong. */
  readonly minutes: number;
  /** Money for the parts used. */
  readonly parts: number;
  /** Days jobs waited for this part. */
  readonly waiting_days: number;
  /** Times the same part of the same reel had failed again within 90 days. */
  readonly comebacks: number;
  /** What a bench minute earns by the shop's own labour charges; null where none are written: then a minute counts as 1. */
  readonly minute_worth: number | null;
  /** All of it in money, see `COST_WEIGHTS`. */
  readonly money: number;
}

/** The commonest fault at the part on this model, beside the others. */
export interface LeadingFault {
  readonly mode: string;
  readonly failed: number;
  readonly of: number;
  readonly others_failed: number;
  readonly others_of: number;
  /** Chance of a difference this large in the share of openings with this fault, planned openings. */
  readonly p_value: number | null;
}

/** One part on one model, or on a whole series (all sizes of a model), judged. */
export interface Verdict {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly family: string | null;
  readonly maker: string | null;
  /** Model, or the name its sizes share. */
  readonly model: string;
  readonly reel_kind: string | null;
  /** True for a series; then `models` holds the names of its sizes, else just the model. */
  readonly series: boolean;
  readonly models: readonly string[];
  readonly denominator: Denominator;
  /** The word to show, taken from planned openings where they suffice, else from all. */
  readonly word: VerdictWord;
  readonly decided_on: "planned" | "*";
  /** Why, in sentences a shop owner understands, the most important first. */
  readonly reasons: readonly string[];
  /** Every way of coming in, in the order of `OPENINGS`. */
  readonly sides: readonly VerdictSide[];
  /** Models that stand out themselves and are therefore not among the others, by name. */
  readonly left_out: readonly string[];
  /** Of the side the word was taken from, see `VerdictSide.widened`. */
  readonly widened: number;
  readonly seasons: readonly SeasonSide[];
  /** Seasons in which it was worse than the others as well, of those with enough to say anything. */
  readonly seasons_agree: number;
  readonly seasons_told: number;
  readonly fault: LeadingFault | null;
  readonly cost: FailureCost;
}

/** The side of a verdict for one way of coming in. */
export function sideOf(verdict: Pick<Verdict, "sides">, opening: Opening): VerdictSide {
  const side = verdict.sides.find((one) => one.opening === opening);
  if (!side) throw new RangeError(`sideOf: opening must be one of the verdict's sides, got ${opening}`);
  return side;
}
