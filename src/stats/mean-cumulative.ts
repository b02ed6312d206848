import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import { requireFinite, requireInside } from "./requirement.ts";

/** One reel watched from age 0 to `end`, with the ages of its failures; one at `end` itself is seen. */
export interface Watched { end: number; events: readonly number[] }

export interface MeanCumulative {
  time: number;
  /** Still watched at that age. */
  at_risk: number;
  events: number;
  /** Failures a reel has had on average by then. */
  mean: number;
  /** Standard error that allows for reels that are worse than others (Nelson), and the one that does not (Poisson). */
  se: number;
  se_poisson: number;
  low: number;
  high: number;
}

/** Failures by age: how many there were, and of whom. */
function byAge(watched: readonly Watched[]): Map<number, number[]> {
  const ages = new Map<number, number[]>();
  watched.forEach(({ events }, unit) => {
    for (const age of events) {
      const units = ages.get(age);
      if (units) units.push(unit);
      else ages.set(age, [unit]);
    }
  });
  return ages;
}

function requireWatched(watched: readonly Watched[]): void {
  requireFinite("meanCumulative", "watched", watched.flatMap(({ end, events }) => [end, ...events]));
  const late = watched.find(({ end, events }) => events.some((age) => age > end || age < 0));
  if (late) throw new RangeError(`meanCumulative: events must lie in 0…end, got ${late.events.join(", ")} with end ${late.end}`);
}

/**
 * Mean number of failures by age over reels that were watched for unlike times.
 *
 * Nelson (1995, Technometrics 37:147-157) with the robust variance of Lawless & Nadeau (1995, Technometrics 37:158-168); its
 * limits are mean ± z se on the log scale, so that they stay above 0. Several failures of one reel at one age count each.
 *
 * The robust variance at an age is Σ over reels (Σ over ages so far of (its failures − mean step) / at risk)². Reels still
 * watched share the same sum but for their own failures, so one pass over ages and failures is enough.
 *
 * @returns one entry for each age with a failure, rising
 * @throws {RangeError} if an age is not finite, below 0 or beyond the end of watching
 * @example
 * meanCumulative([{ end: 10, events: [2] }, { end: 10, events: [] }])[0]?.mean; // => 0.5000
 */
export function meanCumulative(watched: readonly Watched[], level = 0.95): MeanCumulative[] {
  requireInside("meanCumulative", "level", level);
  requireWatched(watched);
  const z = normalQuantile((1 + level) / 2, 0, 1), ages = [...byAge(watched)].sort(([a], [b]) => a - b);
  const leaving = watched.map((_, unit) => unit).sort((a, b) => (watched[a]?.end ?? 0) - (watched[b]?.end ?? 0));
  // A watched reel's sum is own[unit] − common; those no longer watched keep theirs, whose squares are `settled`.
  const own = new Float64Array(watched.length);
  let gone = 0, common = 0, settled = 0, of_own = 0, of_own_squared = 0, mean = 0, poisson = 0;
  return ages.map(([time, units]) => {
    for (let unit = leaving[gone]; unit !== undefined && (watched[unit]?.end ?? 0) < time; unit = leaving[gone]) {
      const mine = own[unit] as number;
      settled += (mine - common) ** 2;
      of_own -= mine;
      of_own_squared -= mine ** 2;
      gone += 1;
    }
    const at_risk = watched.length - gone, step = units.length / at_risk;
    for (const unit of units) {
      const before = own[unit] as number, after = before + 1 / at_risk;
      own[unit] = after;
      of_own += after - before;
      of_own_squared += after ** 2 - before ** 2;
    }
    common += step / at_risk;
    mean += step;
    poisson += step / at_risk;
    const se = Math.sqrt(Math.max(0, settled + of_own_squared - 2 * common * of_own + at_risk * common ** 2));
    const far = Math.exp((z * se) / mean);
    return { time, at_risk, events: units.length, mean, se, se_poisson: Math.sqrt(poisson), low: mean / far, high: mean * far };
  });
}
