import gammaln from "@stdlib/math-base-special-gammaln";
import { requireInside, requirePositive, requireWhole } from "./requirement.ts";

/** So many parts looked at again: when they were fitted, which are used alike (`like`, within the larger `group`), and whether they had failed. */
export interface LookedAgain { readonly stretch: number; readonly like: number; readonly group: number; readonly failed: boolean; readonly count: number }
/** So many parts fitted in a stretch with one batch's name written beside them. */
export interface NameWritten { readonly stretch: number; readonly name: string; readonly count: number }

/** An end of the window: its likeliest place, half its weight on either side, and the range that plausibly holds it. */
export interface WindowEnd { readonly middle: number; readonly low: number; readonly high: number }
export interface WindowEnds { readonly first: WindowEnd; readonly last: WindowEnd }

interface Window { readonly first: number; readonly last: number }

/** Parts of the window fail so many times as fast as the others; which of these is left open. */
const TIMES = [1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
/** Looks of its group that each set of likes is lent, so that a thin one has a share. */
const LENT = 2;
/** The usual shares are those outside the window, and the window depends on them: three turns, and nothing moves any more. */
const TURNS = 3;

/** Share of those alike that had failed, outside the window, drawn toward their group's. */
function usualShares(looks: readonly LookedAgain[], outside: readonly LookedAgain[]): number[] {
  const likes = new Map<number, [number, number]>(), groups = new Map<number, [number, number]>();
  const add = (to: Map<number, [number, number]>, key: number, { failed, count }: LookedAgain) => {
    const [seen, bad] = to.get(key) ?? [0, 0];
    to.set(key, [seen + count, bad + (failed ? count : 0)]);
  };
  for (const look of outside) {
    add(likes, look.like, look);
    add(groups, look.group, look);
  }
  return looks.map(({ like, group }) => {
    const [all, all_bad] = groups.get(group) ?? [0, 0], [seen, bad] = likes.get(like) ?? [0, 0];
    return (bad + (LENT * (all_bad + 0.5)) / (all + 1)) / (seen + LENT);
  });
}

/** Log-likelihood of one look when the part fails `times` as fast, over that at its usual share. */
function gain(times: number, usual: number, failed: boolean): number {
  const sound = Math.log1p(-usual);
  return failed ? Math.log(-Math.expm1(times * sound)) - Math.log(usual) : (times - 1) * sound;
}

/** Sums up to each stretch, so that a window's sum is a difference. */
function running(stretches: number, at: (add: (stretch: number, value: number) => void) => void): (window: Window) => number {
  const sums = new Float64Array(stretches + 1);
  at((stretch, value) => { sums[stretch + 1] = (sums[stretch + 1] as number) + value; });
  for (let i = 1; i <= stretches; i += 1) sums[i] = (sums[i] as number) + (sums[i - 1] as number);
  return ({ first, last }) => (sums[last + 1] as number) - (sums[first] as number);
}

/** Logarithms as weights that sum to 1; nothing possible weighs nothing. */
function weights(logs: readonly number[]): number[] {
  const top = Math.max(...logs);
  if (top === -Infinity) return logs.map(() => 0);
  const plain = logs.map((log) => Math.exp(log - top)), sum = plain.reduce((total, one) => total + one, 0);
  return plain.map((one) => one / sum);
}

/** Log-probability of `count` named among `all` when every share is as likely. */
const evenly = (count: number, all: number): number => gammaln(count + 1) + gammaln(all - count + 1) - gammaln(all + 2);

/** How well each window fits when one batch was fitted in it: its name common inside and rarer outside. */
function weightsOfName(windows: readonly Window[], stretches: number, own: readonly NameWritten[], all: readonly NameWritten[]): number[] {
  const of = (list: readonly NameWritten[]) => running(stretches, (add) => list.forEach(({ stretch, count }) => add(stretch, count)));
  const named = of(own), written = of(all), whole = { first: 0, last: stretches - 1 }, mine = named(whole), total = written(whole);
  return weights(windows.map((window) => {
    const inside = named(window), told = written(window);
    const rarer = told > 0 && inside * (total - told) > (mine - inside) * told;
    return rarer || (told === total && inside > 0) ? evenly(inside, told) + evenly(mine - inside, total - told) : -Infinity;
  }));
}

/** What is known of the window before any failure: any may be it, or that of any one batch whose name is written at least twice. */
function before(windows: readonly Window[], stretches: number, names: readonly NameWritten[]): number[] {
  const sum = windows.map(() => 1 / windows.length);
  for (const name of new Set(names.map((one) => one.name))) {
    const own = names.filter((one) => one.name === name);
    if (own.reduce((total, { count }) => total + count, 0) < 2) continue;
    weightsOfName(windows, stretches, own, names).forEach((weight, i) => { sum[i] = (sum[i] as number) + weight; });
  }
  return sum;
}

function end(windows: readonly Window[], weight: readonly number[], which: keyof Window, stretches: number, level: number): WindowEnd {
  const upTo = running(stretches, (add) => windows.forEach((window, i) => add(window[which], weight[i] as number)));
  const at = (share: number) => {
    for (let last = 0; last < stretches; last += 1) if (upTo({ first: 0, last }) >= share - 1e-12) return last;
    return stretches - 1;
  };
  return { low: at((1 - level) / 2), middle: at(0.5), high: at((1 + level) / 2) };
}

/**
 * When a window of bad fittings began and ended, with the range each end plausibly lies in, once it is known that there is
 * one (see `windowScan`).
 *
 * A change-point posterior (as Smith 1975, Biometrika 62:407-416, for one change): inside the window parts fail some times as
 * fast as their likes outside, by how much is left open; every window is as likely beforehand, or is that of one batch
 * as far as names written beside fittings tell it. The middles of both ends' distributions miss less than the likeliest window.
 *
 * @param names batch names written beside fittings, whether or not they were looked at again
 * @param longest most stretches the window may hold
 * @returns null when no part was looked at again
 * @throws {RangeError} unless stretches and counts are whole numbers of at least 0 and `level` lies inside 0…1
 * @example
 * windowEnds([], [], 9); // => null
 */
export function windowEnds(looks: readonly LookedAgain[], names: readonly NameWritten[], longest: number, level = 0.95): WindowEnds | null {
  requirePositive("windowEnds", "longest", longest);
  requireInside("windowEnds", "level", level);
  for (const { stretch } of [...looks, ...names]) requireWhole("windowEnds", "stretch", stretch);
  for (const { count } of [...looks, ...names]) requireWhole("windowEnds", "count", count);
  if (looks.length === 0) return null;
  const stretches = [...looks, ...names].reduce((most, { stretch }) => Math.max(most, stretch + 1), 0);
  const windows = Array.from({ length: stretches }, (_, first) => Array.from({ length: Math.min(longest, stretches - first) }, (__, more) => ({ first, last: first + more }))).flat();
  const known = before(windows, stretches, names).map(Math.log);
  let outside = looks, ends: WindowEnds | null = null;
  for (let turn = 0; turn < TURNS; turn += 1) {
    const usual = usualShares(looks, outside);
    const sums = TIMES.map((times) => running(stretches, (add) => looks.forEach(({ stretch, failed, count }, i) => add(stretch, count * gain(times, usual[i] as number, failed)))));
    const weight = weights(windows.flatMap((window, i) => sums.map((sum) => (known[i] as number) + sum(window))));
    const by_window = windows.map((_, i) => weight.slice(i * TIMES.length, (i + 1) * TIMES.length).reduce((sum, one) => sum + one, 0));
    ends = { first: end(windows, by_window, "first", stretches, level), last: end(windows, by_window, "last", stretches, level) };
    const { first, last } = ends;
    outside = looks.filter(({ stretch }) => stretch < first.middle || stretch > last.middle);
  }
  return ends;
}
