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
  /** Which set of covariates each line has, how many different ones there are, and their values set by set. */
  readonly set: Int32Array;
  readonly sets: number;
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

/** Covariates that several lines share, once. */
function setsOf(lines: readonly LifeLine[]): Pick<PackedLines, "set" | "sets" | "x"> {
  const known = new Map<string, number>(), values: number[] = [];
  const set = Int32Array.from(lines, ({ x = [] }) => {
    const key = x.length === 0 ? "" : x.join(" "), found = known.get(key);
    if (found !== undefined) return found;
    values.push(...x);
    known.set(key, known.size);
    return known.size - 1;
  });
  return { set, sets: known.size, x: Float64Array.from(values) };
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
    count: Float64Array.from(lines, ({ count = 1 }) => count), ...setsOf(lines),
  };
}

/**
 * Lines that are alike put together, their counts added; a fit costs as much as there are lines.
 *
 * @example
 * groupLines([{ low: 5, high: 9 }, { low: 5, high: 9 }])[0]?.count; // => 2
 */
export function groupLines(lines: readonly LifeLine[]): LifeLine[] {
  const found = new Map<string, Map<number, Map<number, { line: LifeLine; count: number }>>>(), all: { line: LifeLine; count: number }[] = [];
  for (const line of lines) {
    const { low, high, entry = 0, count = 1, x = [] } = line, by_low = at(found, entry === 0 && x.length === 0 ? "" : `${entry} ${x.join(" ")}`), by_high = at(by_low, low);
    const before = by_high.get(high);
    if (before) before.count += count;
    else {
      const group = { line, count };
      by_high.set(high, group);
      all.push(group);
    }
  }
  return all.map(({ line, count }) => ({ ...line, count }));
}

/** The map kept under a key; an empty one at first. */
function at<Key, Inner, Value>(maps: Map<Key, Map<Inner, Value>>, key: Key): Map<Inner, Value> {
  const known = maps.get(key) ?? new Map<Inner, Value>();
  maps.set(key, known);
  return known;
}
