import type { RecordsFilter } from "../filter.ts";

/** What a part's life is counted in. Salt days hold brackish days too. */
export const CLOCKS = ["salt_days", "use_days", "months"] as const;
export type Clock = (typeof CLOCKS)[number];

/**
 * Which parts count, by how they were first looked at. `planned`: not those first looked at on a reel that came with something wrong, whether
 * fitted here or there before: a part that brings its reel in chose itself. `all`: those too. `none`: as `planned`, and no part that was there
 * when the reel first came; in the other two such a part counts as if fitted at the service before.
 */
export type FirstSights = "planned" | "all" | "none";

export interface WearFilter extends RecordsFilter {
  readonly clock: Clock;
  readonly first_sights: FirstSights;
}

/** What became of a fit; only `ok` and `separated` have a curve. The words for the owner are in `WearRow.status_text`. */
export const WEAR_STATUSES = [
  "ok", "separated", "not wear-out", "too few failures", "too few good", "none failed", "all failed", "one exposure", "no exposure", "confounded", "did not converge",
] as const;
export type WearStatus = (typeof WEAR_STATUSES)[number];

/** `spells`: parts followed from fitting to failure; `current status`: every inspection for itself, as no reel came twice under a serial or tag. */
export type WearMethod = "spells" | "current status";

/** Whether failures come the likelier the longer a part was in use on the clock; `not plain` where the range of the shape allows both. */
export type Wears = "yes" | "not plain" | "no";

/** A figure with its 95 % limits (profile likelihood); null where it cannot be had. */
export interface Limits {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
}

/** Exposure by which a share of the parts has failed. */
export interface Life extends Limits {
  /** The share, 0…1. */
  readonly share: number;
  /** True when the value lies over the longest exposure seen: then `value` is null and only a limit inside the records is given. */
  readonly beyond: boolean;
}

/** One position, for all parts (`*`) or one level of a condition (`rinse: never`). */
export interface WearRow {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly clock: Clock;
  readonly group: string;
  readonly method: WearMethod;
  /** Parts followed, or inspections where none could be. */
  readonly n: number;
  readonly failed: number;
  /** Of `n`, those that could not be followed because their visit has no serial or tag. */
  readonly unlinked: number;
  readonly status: WearStatus;
  /** Why there is no curve, or that the part does not wear with this clock; "" where there is nothing to say. */
  readonly status_text: string;
  /** Null where there is no curve to tell it from. */
  readonly wears: Wears | null;
  readonly shape: Limits;
  readonly shape_se: number | null;
  readonly scale: Limits;
  readonly b10: Life;
  readonly b20: Life;
  readonly b50: Life;
  /** With no or few failures: B10 is at least `low`; with no part good: at most `high`. Shape taken as 1.5. */
  readonly b10_bound: Limits;
  readonly longest: number | null;
  readonly log_likelihood: number | null;
  /** Found failed without any exposure on this clock since last good: kept out of the fit. */
  readonly failed_without_exposure: number;
  /** Left out because this clock is not written on a visit. */
  readonly clock_missing: number;
  /** Left out because the reel came in with something wrong when the part was first looked at; with `none` also those there before. */
  readonly chosen_by_fault: number;
  readonly note: string;
}

export interface CurvePoint { readonly exposure: number; readonly fitted: number; readonly low: number; readonly high: number; readonly beyond: boolean }
/** The share failed by an exposure without any assumption on the shape of the curve; `n`: inspections or parts behind it. */
export interface StepPoint { readonly exposure: number; readonly observed: number; readonly n: number }
/** Inspections at one exposure. */
export interface RugMark { readonly exposure: number; readonly good: number; readonly failed: number }

/** How far the curve is from the steps: twice the difference of log-likelihoods. `bad`: further than chance would bring about. */
export interface Misfit { readonly deviance: number; readonly degrees: number; readonly bad: boolean; readonly text: string }

/** One level of a condition beside its reference level. */
export interface WearEffect {
  readonly position: string;
  /** `rinse`, `water`, `sealed` or `tier`. */
  readonly condition: string;
  readonly level: string;
  readonly reference: string;
  readonly n: number;
  readonly failed: number;
  /** Days at the reference level that wear as much as one day at this level: 2 means the part lasts half as long. Never a promise. */
  readonly time_ratio: Limits;
  /** Logarithm of `time_ratio` and its standard error. */
  readonly coefficient: number | null;
  readonly se: number | null;
  readonly status: WearStatus;
  readonly note: string;
}

/** How long the part lasts on a model beside all models, like conditions compared, thin models drawn toward the rest: 0.5 means half as long. */
export interface ModelLife { readonly maker: string | null; readonly model: string; readonly n: number; readonly failed: number; readonly life_ratio: Limits }

/** Share of every grade 0…4 by exposure: fitted points, and what was seen in bands of exposure. */
export interface GradePicture {
  readonly status: "ok" | "too few" | "did not converge";
  readonly points: readonly { readonly exposure: number; readonly shares: readonly number[] }[];
  readonly bands: readonly { readonly from: number; readonly to: number; readonly counts: readonly number[] }[];
  /** Inspections without a written grade, taken as 0. */
  readonly unwritten: number;
  readonly note: string;
}

/** The same question answered under another assumption. */
export interface Sensitivity { readonly assumption: string; readonly n: number; readonly failed: number; readonly b10: Life; readonly note: string }

/** The picture of one position: how its parts fail along the clock. */
export interface WearCurve {
  readonly overall: WearRow;
  readonly curve: readonly CurvePoint[];
  readonly steps: readonly StepPoint[];
  readonly rug: readonly RugMark[];
  readonly misfit: Misfit | null;
}

/** What stands beside that picture. */
export interface WearBeside {
  readonly groups: readonly WearRow[];
  readonly effects: readonly WearEffect[];
  readonly models: readonly ModelLife[];
  readonly grades: GradePicture;
  readonly sensitivity: readonly Sensitivity[];
}

/** Everything the room shows of one position. */
export interface WearPage extends WearCurve, WearBeside {}

/** All positions, the soonest B10 first; then those without one, and at the end those that do not wear with this clock. */
export interface Wear {
  readonly rows: readonly WearRow[];
  readonly clock: Clock;
  /** Share of inspections that belong to a reel known by serial or tag; null without any inspection. */
  readonly linked_share: number | null;
  /** Parts on reels that came together with others, counted as if each had come alone. */
  readonly batch_mates: number;
  /** Visits whose written months contradict the visit before. */
  readonly contradicting_months: number;
  readonly remarks: readonly string[];
}
