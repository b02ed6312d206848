import type { Random } from "./random.ts";
import { requireWhole } from "./requirement.ts";

/**
 * So many parts fitted in a stretch of time (a month, say), all failed or all sound. What is expected of them is the share of
 * all those with the same `like` (position and days fished, say); failures are shuffled among those of the same `kind`
 * (position and model).
 */
export interface Fitted { stretch: number; kind: number; like: number; failed: boolean; count: number }

export interface Window {
  /** First and last stretch, both included. */
  first: number;
  last: number;
  fitted: number;
  failed: number;
  expected: number;
  /** Logarithm of how much likelier the fittings are when the window has a share of its own. */
  log_ratio: number;
}
export interface Scan {
  /** The likeliest bad window; null when none is worse than the rest. */
  window: Window | null;
  /** Share of shufflings whose worst window is as bad; the true order counts as one of them. */
  p: number | null;
}

interface Sum { fitted: number; failed: number; expected: number }

/** Log-likelihood of `count` among `fitted` at their own share, over that at the expected one. */
function gain(count: number, fitted: number, expected: number): number {
  const part = (seen: number, usual: number) => (seen === 0 ? 0 : seen * Math.log(seen / usual));
  return part(count, expected) + part(fitted - count, fitted - expected);
}

/** Log-likelihood ratio of a window with a share of its own beside the rest with another; 0 when it is not the higher one. */
function logRatio({ fitted, failed, expected }: Sum, all: Sum): number {
  if (failed <= expected || expected <= 0) return 0;
  return gain(failed, fitted, expected) + gain(all.failed - failed, all.fitted - fitted, all.expected - expected);
}

/** Sums over the fittings of each number, from 0. */
function counts(fittings: readonly Fitted[], number: (one: Fitted) => number, of: (one: Fitted) => number): Float64Array {
  const sums = new Float64Array(fittings.reduce((most, one) => Math.max(most, number(one) + 1), 0));
  for (const one of fittings) sums[number(one)] = (sums[number(one)] as number) + of(one);
  return sums;
}
const badOf = ({ failed, count }: Fitted): number => (failed ? count : 0);
const total = (of: Float64Array): number => of.reduce((sum, one) => sum + one, 0);

/** Every window of at most `longest` stretches, those that begin together one after the other, and all fittings. */
function windowsOf(fittings: readonly Fitted[], longest: number): { windows: Window[]; all: Sum } {
  const likes = counts(fittings, ({ like }) => like, ({ count }) => count), likes_bad = counts(fittings, ({ like }) => like, badOf);
  const of = (value: (one: Fitted) => number) => counts(fittings, ({ stretch }) => stretch, value);
  const fitted = of(({ count }) => count), bad = of(badOf), expected = of(({ like, count }) => (count * (likes_bad[like] as number)) / (likes[like] as number));
  const all = { fitted: total(fitted), failed: total(bad), expected: total(expected) }, windows: Window[] = [];
  for (let first = 0; first < bad.length; first += 1) {
    const inside = { fitted: 0, failed: 0, expected: 0 };
    for (let last = first; last < Math.min(bad.length, first + longest); last += 1) {
      inside.fitted += fitted[last] as number;
      inside.failed += bad[last] as number;
      inside.expected += expected[last] as number;
      windows.push({ first, last, ...inside, log_ratio: logRatio(inside, all) });
    }
  }
  return { windows, all };
}

/**
 * Fewest failures with which a window is as bad as `limit`; infinite where all would not do. More failures only make it worse, so a
 * shuffling needs no logarithm: it is as bad when one window reaches its number.
 */
function fewest({ fitted, expected }: Window, all: Sum, limit: number): number {
  const reached = (failed: number) => logRatio({ fitted, failed, expected }, all) >= limit;
  let low = 0, high = Math.min(fitted, all.failed);
  if (!reached(high)) return Infinity;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (reached(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function anyReached(bad: Float64Array, longest: number, needed: Float64Array): boolean {
  let at = 0;
  for (let first = 0; first < bad.length; first += 1) {
    let failed = 0;
    for (let last = first; last < Math.min(bad.length, first + longest); last += 1) {
      failed += bad[last] as number;
      if (failed >= (needed[at] as number)) return true;
      at += 1;
    }
  }
  return false;
}

/** The stretch of every piece of a kind, and how many of the rarer sort, failed or sound, are drawn among them. */
interface Kind { readonly places: Uint32Array; readonly draws: number; readonly failed: boolean }

function kindOf(cells: readonly Fitted[]): Kind {
  const places = Uint32Array.from(cells.flatMap(({ stretch, count }) => Array.from({ length: count }, () => stretch)));
  const bad = cells.reduce((sum, one) => sum + badOf(one), 0), sound = places.length - bad;
  return { places, draws: Math.min(bad, sound), failed: bad <= sound };
}

/** Failures by stretch when it is left to chance which pieces of a kind failed; the same list each time, filled anew. */
function shuffling(fittings: readonly Fitted[], stretches: number, random: Random): () => Float64Array {
  const cells = new Map<number, Fitted[]>(), most = new Float64Array(stretches), bad = new Float64Array(stretches);
  for (const one of fittings) {
    const known = cells.get(one.kind);
    if (known) known.push(one);
    else cells.set(one.kind, [one]);
  }
  const kinds = [...cells.values()].map(kindOf);
  for (const { places, failed } of kinds) if (!failed) for (const stretch of places) most[stretch] = (most[stretch] as number) + 1;
  return () => {
    bad.set(most);
    for (const { places, draws, failed } of kinds) {
      // The first steps of a Fisher–Yates shuffle: what is not drawn need not be put in order.
      for (let i = 0; i < draws; i += 1) {
        const j = i + Math.floor(random() * (places.length - i)), stretch = places[j] as number;
        places[j] = places[i] as number;
        places[i] = stretch;
        bad[stretch] = (bad[stretch] as number) + (failed ? 1 : -1);
      }
    }
    return bad;
  };
}

/**
 * The stretch of time whose fittings failed most beyond what their kinds do, and whether chance would show one like it.
 *
 * Scan statistic: largest Bernoulli likelihood ratio over all windows (Kulldorff 1997, Communications in Statistics
 * 26:1481-1496), fittings taken at the mean share of those like them; its p value by shuffling failures within each kind
 * (model × position), so that a bad model cannot make a bad window.
 *
 * @param longest most stretches a window may hold
 * @param tries shufflings; the smallest p is 1 / (tries + 1)
 * @throws {RangeError} unless stretches and kinds are whole numbers of at least 0 and counts of at least 1
 * @example
 * windowScan([], 6, 99, () => 0).window; // => null
 */
export function windowScan(fittings: readonly Fitted[], longest: number, tries: number, random: Random): Scan {
  for (const { stretch, kind, like, count } of fittings) {
    requireWhole("windowScan", "stretch", stretch);
    requireWhole("windowScan", "kind", kind);
    requireWhole("windowScan", "like", like);
    requireWhole("windowScan", "count", count, 1);
  }
  const { windows, all } = windowsOf(fittings, longest);
  const window = windows.reduce<Window | null>((best, one) => (one.log_ratio > (best?.log_ratio ?? 0) ? one : best), null);
  if (window === null) return { window: null, p: null };
  const needed = Float64Array.from(windows, (one) => fewest(one, all, window.log_ratio - 1e-9));
  const stretches = windows.reduce((most, { last }) => Math.max(most, last + 1), 0), shuffled = shuffling(fittings, stretches, random);
  let as_bad = 1;
  for (let turn = 0; turn < tries; turn += 1) if (anyReached(shuffled(), longest, needed)) as_bad += 1;
  return { window, p: as_bad / (tries + 1) };
}
