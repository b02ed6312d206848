import type { LifeLine } from "./life-lines.ts";
import type { WeibullLife } from "./weibull-life.ts";

/** Cumulated hazard of a line's ends under the fit, and of its entry. */
interface Hazards { readonly count: number; readonly low: number; readonly high: number; readonly entry: number; readonly exact: boolean; readonly log_time: number }

function hazardsOf({ low, high, entry = 0, count = 1, x = [] }: LifeLine, { theta, shape, packed: { unit } }: WeibullLife): Hazards {
  const rest = x.reduce((sum, one, j) => sum + one * (theta[j + 2] as number), theta[0] as number);
  const at = (exposure: number) => Math.exp(rest + shape * Math.log(exposure / unit));
  return { count, low: at(low), high: at(high), entry: at(entry), exact: low === high, log_time: Math.log(low) };
}

/**
 * Log-likelihood of some parts as a function of how far their life departs from a fit: `departure` 0 as the fit says, ln 2 twice as long.
 * Shape and effects stay as fitted, so each line's hazards are worked out once and a value costs next to nothing.
 *
 * @param lines covariates as many as the fit has; those left out are 0
 * @example
 * departingLife([{ low: 9, high: Infinity }], weibullLife([{ low: 0, high: 4, count: 3 }, { low: 4, high: Infinity, count: 9 }, { low: 0, high: 9, count: 8 }, { low: 9, high: Infinity, count: 8 }]))(0); // => -0.6931
 */
export function departingLife(lines: readonly LifeLine[], fit: WeibullLife): (departure: number) => number {
  const { shape } = fit, hazards = lines.map((line) => hazardsOf(line, fit));
  return (departure) => {
    const factor = Math.exp(-shape * departure);
    let value = 0;
    for (const { count, low, high, entry, exact, log_time } of hazards) {
      if (exact) value += count * (Math.log(low * factor * shape) - log_time - low * factor);
      else value += count * ((high === Infinity ? 0 : Math.log(-Math.expm1(-(high - low) * factor))) - low * factor);
      value += count * entry * factor;
    }
    return value;
  };
}
