import type { FailureRate } from "../failures/failure-rate.ts";
import type { FailedByNow } from "../wear/failed-by-now.ts";
import type { Causes, Cause } from "./causes.ts";

/** The chance that a part of the reel on the bench has failed. Shares 0…1. */
export interface PartChance {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  /** Parts (or openings) the chance rests on, and how many of them had failed. */
  readonly n: number;
  readonly failed: number;
  readonly from: "salt days" | "days fished" | "months" | "this model" | "all reels of the kind";
  /** Share failed at this part over all reels of the kind that came for planned work; null under ten. */
  readonly usual: number | null;
}

/** A share is told from this many on. */
const FEWEST = 10;

const CLOCKS = { salt_days: "salt days", use_days: "days fished", months: "months" } as const;

/** By wear where it can be told, the clock that says more; else by how often it had failed. */
function byWear(worn: FailedByNow | undefined): Pick<PartChance, "chance" | "low" | "high" | "n" | "failed" | "from"> | null {
  const told = (worn?.clocks ?? []).flatMap(({ share: { value, low, high }, clock, n, failed }) =>
    (value === null || low === null || high === null ? [] : [{ chance: value, low, high, n, failed, from: CLOCKS[clock] }]));
  return told.sort((a, b) => b.chance - a.chance)[0] ?? null;
}

function byCount(model: FailureRate | undefined, kind: FailureRate | undefined): Pick<PartChance, "chance" | "low" | "high" | "n" | "failed" | "from"> | null {
  if (model && model.pooled_rate !== null && model.pooled_low !== null && model.pooled_high !== null) {
    return { chance: model.pooled_rate, low: model.pooled_low, high: model.pooled_high, n: model.inspected, failed: model.failed, from: "this model" };
  }
  if (!kind || kind.rate === null || kind.rate_low === null || kind.rate_high === null) return null;
  return { chance: kind.rate, low: kind.rate_low, high: kind.rate_high, n: kind.inspected, failed: kind.failed, from: "all reels of the kind" };
}

/**
 * The chance of every part, likeliest first: by wear at the exposure told, where the records reach that far; else by how often it
 * had failed on the model when it came for planned work, drawn toward the other models; else on all reels of the kind.
 *
 * @param rates of planned openings of one kind of reel, all models and each model
 */
export function partChances(rates: readonly FailureRate[], worn: readonly FailedByNow[], of: { readonly maker: string | null; readonly model: string | null }): readonly PartChance[] {
  const places = rates.filter((row) => row.model === "*");
  return places.flatMap((kind) => {
    const model = of.model === null ? undefined : rates.find((row) => row.position === kind.position && row.model === of.model && row.maker === of.maker);
    const found = byWear(worn.find(({ position }) => position === kind.position)) ?? byCount(model, kind);
    const { position, position_name, group_code, group_name } = kind;
    return found === null ? [] : [{ position, position_name, group_code, group_name, ...found, usual: kind.inspected < FEWEST ? null : kind.failed / kind.inspected }];
  }).sort((a, b) => b.chance - a.chance);
}

/** A cause with its chance on this very reel. */
export interface LikelyCause extends Cause {
  /** How many times as likely to have failed as on any reel of the kind its parts are here; 1 where nothing is known. */
  readonly times_as_likely: number;
  /** The chance with that taken in; all causes together make 1. */
  readonly here: number;
}

/** A thin count must not turn the list over by itself. */
const MOST_TIMES = 4;

function timesAsLikely({ positions }: Cause, chances: readonly PartChance[]): number {
  const known = positions.flatMap((position) => chances.filter((one) => one.position === position && one.usual !== null && one.usual > 0).map(({ chance, usual }) => chance / (usual ?? 1)));
  if (known.length === 0) return 1;
  return Math.min(MOST_TIMES, Math.max(1 / MOST_TIMES, known.reduce((sum, one) => sum + one, 0) / known.length));
}

/**
 * The causes of a complaint on this reel: each by how likely it is on such reels, times how much likelier its parts are to have
 * failed here than usual (Bayes' rule with the usual share of failed parts as the base), made to add up to 1 again.
 */
export function likelyCauses({ causes }: Causes, chances: readonly PartChance[]): readonly LikelyCause[] {
  const weighed = causes.map((cause) => ({ ...cause, times_as_likely: timesAsLikely(cause, chances) }));
  const whole = weighed.reduce((sum, { chance, times_as_likely }) => sum + chance * times_as_likely, 0);
  return weighed.map((one) => ({ ...one, here: (one.chance * one.times_as_likely) / whole })).sort((a, b) => b.here - a.here);
}
