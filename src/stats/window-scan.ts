import type { Random } from "./random.ts";
import { requireWhole } from "./requirement.ts";

/** What was fitted in one stretch of time (a month, say): failures in total and those to expect. */
export interface Fitted { stretch: number; kind: number; failed: boolean }

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

const part = (count: number, share: number): number => (count === 0 ? 0 : count * Math.log(share));

/** Log-likelihood ratio of a window with a higher share than expected of it; 0 when it is not higher. */
function logRatio(failed: number, expected: number, all_failed: number): number {
  if (failed <= expected || expected <= 0) return 0;
  const out = all_failed - failed, out_expected = all_failed - expected;
  return part(failed, failed / expected) + (out_expected > 0 ? part(out, out / out_expected) : 0);
}

/** Counts and expectations by stretch, from 0; what is expected of a fitting is its kind's share. */
function totals(fittings: readonly Fitted[], failed: readonly boolean[], share: readonly number[], stretches: number) {
  const fitted = new Float64Array(stretches), bad = new Float64Array(stretches), expected = new Float64Array(stretches);
  fittings.forEach(({ stretch, kind }, i) => {
    fitted[stretch] = (fitted[stretch] as number) + 1;
    expected[stretch] = (expected[stretch] as number) + (share[kind] ?? 0);
    if (failed[i]) bad[stretch] = (bad[stretch] as number) + 1;
  });
  return { fitted, bad, expected };
}

/** Best window of at most `longest` stretches. */
function worst({ fitted, bad, expected }: ReturnType<typeof totals>, longest: number, all_failed: number): Window | null {
  let best: Window | null = null;
  for (let first = 0; first < bad.length; first += 1) {
    let n = 0, k = 0, e = 0;
    for (let last = first; last < Math.min(bad.length, first + longest); last += 1) {
      n += fitted[last] as number;
      k += bad[last] as number;
      e += expected[last] as number;
      const log_ratio = logRatio(k, e, all_failed);
      if (log_ratio > (best?.log_ratio ?? 0)) best = { first, last, fitted: n, failed: k, expected: e, log_ratio };
    }
  }
  return best;
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
 * Scan statistic: largest likelihood ratio over all windows (Kulldorff 1997, Communications in Statistics 26:1481-1496), its p value by
 * shuffling failures within each kind (model × position), so that a bad model cannot make a bad window.
 *
 * @param longest most stretches a window may hold
 * @param tries shufflings; the smallest p is 1 / (tries + 1)
 * @throws {RangeError} unless stretches and kinds are whole numbers of at least 0
 * @example
 * windowScan([], 6, 99, () => 0).window; // => null
 */
export function windowScan(fittings: readonly Fitted[], longest: number, tries: number, random: Random): Scan {
  fittings.forEach(({ stretch, kind }) => { requireWhole("windowScan", "stretch", stretch); requireWhole("windowScan", "kind", kind); });
  const failed = fittings.map((one) => one.failed), all_failed = failed.filter(Boolean).length;
  const stretches = fittings.reduce((most, { stretch }) => Math.max(most, stretch + 1), 0);
  const places: number[][] = [];
  fittings.forEach(({ kind }, i) => { (places[kind] ??= []).push(i); });
  const kinds = Array.from(places, (of) => of ?? []), share = kinds.map((of) => (of.length === 0 ? 0 : of.filter((i) => failed[i]).length / of.length));
  const window = worst(totals(fittings, failed, share, stretches), longest, all_failed);
  if (window === null) return { window: null, p: null };
  let as_bad = 1;
  for (let turn = 0; turn < tries; turn += 1) {
    shuffled(failed, kinds, random);
    const other = worst(totals(fittings, failed, share, stretches), longest, all_failed);
    if ((other?.log_ratio ?? 0) >= window.log_ratio - 1e-9) as_bad += 1;
  }
  return { window, p: as_bad / (tries + 1) };
}
