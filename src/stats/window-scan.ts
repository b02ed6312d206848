import type { Random } from "./random.ts";
import { requireWhole } from "./requirement.ts";

/**
 * One part fitted in a stretch of time (a month, say). What is expected of it is the share of all those with the same `like`
 * (position and days fished, say); failures are shuffled among those of the same `kind` (position and model).
 */
export interface Fitted { stretch: number; kind: number; like: number; failed: boolean }

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

/** Log-likelihood of `count` among `fitted` at their own share, over that at the expected one. */
function gain(count: number, fitted: number, expected: number): number {
  const part = (seen: number, usual: number) => (seen === 0 ? 0 : seen * Math.log(seen / usual));
  return part(count, expected) + part(fitted - count, fitted - expected);
}

/** Log-likelihood ratio of a window with a share of its own beside the rest with another; 0 when it is not the higher one. */
function logRatio(inside: Sum, all: Sum): number {
  const { fitted, failed, expected } = inside;
  if (failed <= expected || expected <= 0) return 0;
  return gain(failed, fitted, expected) + gain(all.failed - failed, all.fitted - fitted, all.expected - expected);
}
interface Sum { fitted: number; failed: number; expected: number }

/** Counts and expectations by stretch, from 0. */
function totals(fittings: readonly Fitted[], failed: readonly boolean[], share: readonly number[], stretches: number) {
  const fitted = new Float64Array(stretches), bad = new Float64Array(stretches), expected = new Float64Array(stretches);
  fittings.forEach(({ stretch, like }, i) => {
    fitted[stretch] = (fitted[stretch] as number) + 1;
    expected[stretch] = (expected[stretch] as number) + (share[like] ?? 0);
    if (failed[i]) bad[stretch] = (bad[stretch] as number) + 1;
  });
  return { fitted, bad, expected };
}

/** Best window of at most `longest` stretches. */
function worst({ fitted, bad, expected }: ReturnType<typeof totals>, longest: number): Window | null {
  const sum = (of: Float64Array) => of.reduce((total, one) => total + one, 0), all = { fitted: sum(fitted), failed: sum(bad), expected: sum(expected) };
  let best: Window | null = null;
  for (let first = 0; first < bad.length; first += 1) {
    const inside = { fitted: 0, failed: 0, expected: 0 };
    for (let last = first; last < Math.min(bad.length, first + longest); last += 1) {
      inside.fitted += fitted[last] as number;
      inside.failed += bad[last] as number;
      inside.expected += expected[last] as number;
      const log_ratio = logRatio(inside, all);
      if (log_ratio > (best?.log_ratio ?? 0)) best = { first, last, ...inside, log_ratio };
    }
  }
  return best;
}

/** Places of each number in the list. */
function together(list: readonly number[]): number[][] {
  const places: number[][] = [];
  list.forEach((number, i) => { (places[number] ??= []).push(i); });
  return Array.from(places, (of) => of ?? []);
}

/** Shuffles which fittings of one kind failed, in place (Fisher–Yates within the kind's places). */
function shuffled(failed: boolean[], places: readonly (readonly number[])[], random: Random): void {
  for (const of of places) {
    for (let i = of.length - 1; i > 0; i -= 1) {
      const j = Math.floor(random() * (i + 1)), a = of[i] as number, b = of[j] as number;
      [failed[a], failed[b]] = [failed[b] as boolean, failed[a] as boolean];
    }
  }
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
 * @throws {RangeError} unless stretches and kinds are whole numbers of at least 0
 * @example
 * windowScan([], 6, 99, () => 0).window; // => null
 */
export function windowScan(fittings: readonly Fitted[], longest: number, tries: number, random: Random): Scan {
  for (const { stretch, kind, like } of fittings) {
    Object.entries({ stretch, kind, like }).forEach(([name, value]) => { requireWhole("windowScan", name, value); });
  }
  const failed = fittings.map((one) => one.failed);
  const stretches = fittings.reduce((most, { stretch }) => Math.max(most, stretch + 1), 0);
  const kinds = together(fittings.map(({ kind }) => kind));
  const share = together(fittings.map(({ like }) => like)).map((of) => of.filter((i) => failed[i]).length / Math.max(1, of.length));
  const window = worst(totals(fittings, failed, share, stretches), longest);
  if (window === null) return { window: null, p: null };
  let as_bad = 1;
  for (let turn = 0; turn < tries; turn += 1) {
    shuffled(failed, kinds, random);
    const other = worst(totals(fittings, failed, share, stretches), longest);
    if ((other?.log_ratio ?? 0) >= window.log_ratio - 1e-9) as_bad += 1;
  }
  return { window, p: as_bad / (tries + 1) };
}
