import { requireNonNegative, requireSome } from "./requirement.ts";

/**
 * What is known of the life of one part, or of several alike: it was good at exposure `low` and failed by `high`.
 *
 * `high` Infinity: never seen to fail. `low` 0: failed some time before `high`. Both alike: failed exactly then.
 */
export interface LifeLine {
  readonly low: number;
  readonly high: number;
  /** Exposure before which its failure would not have been seen (left truncation); 0 when it was watched from the start. */
  readonly entry?: number;
  /** Number of parts alike. */
  readonly count?: number;
  /** Covariates, equally many in every line. */
  readonly x?: readonly number[];
}

/** The lines as plain arrays of numbers, exposures as logarithms over `unit` (their geometric mean). */
export interface PackedLines {
  readonly lines: number;
  readonly covariates: number;
  readonly unit: number;
  readonly log_low: Float64Array;
  readonly log_high: Float64Array;
  readonly log_entry: Float64Array;
  readonly count: Float64Array;
  readonly x: Float64Array;
}

const SHOWN = ({ low, high, entry = 0, count = 1 }: LifeLine) => `low ${low}, high ${high}, entry ${entry}, count ${count}`;

function requireLine(line: LifeLine, covariates: number): void {
  const { low, high, entry = 0, count = 1, x = [] } = line;
  requireNonNegative("packLines", "low", low);
  requireNonNegative("packLines", "entry", entry);
  if (!(high >= low && high > 0)) throw new RangeError(`packLines: high must be above 0 and not below low, got ${SHOWN(line)}`);
  if (entry > low) throw new RangeError(`packLines: entry must not lie above low, got ${SHOWN(line)}`);
  if (!(count > 0 && count < Infinity)) throw new RangeError(`packLines: count must be a finite number above 0, got ${SHOWN(line)}`);
  if (x.length !== covariates || !x.every(Number.isFinite)) throw new RangeError(`packLines: x must be ${covariates} finite numbers, got ${x.join(", ") || "none"}`);
}

/** Geometric mean of the exposures that say something, so that logarithms lie around 0. */
function middle(lines: readonly LifeLine[]): number {
  let sum = 0, count = 0;
  for (const { low, high, count: n = 1 } of lines) {
    const at = high < Infinity ? high : low;
    if (at > 0) [sum, count] = [sum + n * Math.log(at), count + n];
  }
  return count > 0 ? Math.exp(sum / count) : 1;
}

/**
 * Checks lines and lays them out for fitting.
 *
 * @throws {RangeError} if there is none, or a line has a limit below 0, `high` under `low`, `entry` over `low`, a count that is
 * not above 0, or another number of covariates than the first
 * @example
 * packLines([{ low: 0, high: 4 }, { low: 9, high: Infinity }]).unit; // => 6.00
 */
export function packLines(lines: readonly LifeLine[]): PackedLines {
  requireSome("packLines", "lines", lines);
  const covariates = lines[0]?.x?.length ?? 0;
  lines.forEach((line) => { requireLine(line, covariates); });
  const unit = middle(lines), logs = (of: (line: LifeLine) => number) => Float64Array.from(lines, (line) => Math.log(of(line) / unit));
  return {
    lines: lines.length, covariates, unit,
    log_low: logs(({ low }) => low), log_high: logs(({ high }) => high), log_entry: logs(({ entry = 0 }) => entry),
    count: Float64Array.from(lines, ({ count = 1 }) => count), x: Float64Array.from(lines.flatMap(({ x = [] }) => [...x])),
  };
}

/**
 * Lines that are alike put together, their counts added; a fit costs as much as there are lines.
 *
 * @example
 * groupLines([{ low: 5, high: 9 }, { low: 5, high: 9 }])[0]?.count; // => 2
 */
export function groupLines(lines: readonly LifeLine[]): LifeLine[] {
  const found = new Map<string, LifeLine & { count: number }>();
  for (const line of lines) {
    const { low, high, entry = 0, count = 1, x = [] } = line, key = `${low} ${high} ${entry} ${x.join(" ")}`, before = found.get(key);
    found.set(key, { ...line, count: (before?.count ?? 0) + count });
  }
  return [...found.values()];
}
