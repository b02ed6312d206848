import { solve } from "ml-matrix";
import { blockTriangle } from "./block-triangle.ts";
import { requireFinite, requireWhole } from "./requirement.ts";

/** What was measured of one kind in one stratum (strata and kinds by number from 0): how often, and its mean. */
export interface Cell { readonly stratum: number; readonly kind: number; readonly n: number; readonly mean: number }

/** For every number, the lowest of those it hangs together with. */
function together(size: number, pairs: readonly (readonly [number, number])[]): number[] {
  const lowest = Array.from({ length: size }, (_, i) => i);
  const top = (i: number): number => (lowest[i] === i ? i : (lowest[i] = top(lowest[i] as number)));
  for (const [a, b] of pairs) {
    const [x, y] = [top(a), top(b)];
    lowest[Math.max(x, y)] = Math.min(x, y);
  }
  return lowest.map((_, i) => top(i));
}

const most = (cells: readonly Cell[], of: (cell: Cell) => number) => cells.reduce((top, cell) => Math.max(top, of(cell) + 1), 0);

/** Sums over cells, by number. */
function sums(size: number, cells: readonly Cell[], at: (cell: Cell) => number, of: (cell: Cell) => number): Float64Array {
  const sum = new Float64Array(size);
  for (const cell of cells) sum[at(cell)] = (sum[at(cell)] as number) + of(cell);
  return sum;
}

/** What each kind has above the first kind it hangs together with, strata held alike. */
function kindEffects(cells: readonly Cell[], kinds: number, free: readonly number[], counts: Float64Array, means: Float64Array): Float64Array {
  const effects = new Float64Array(kinds), root = cells.map(({ n }) => Math.sqrt(n)), shares = new Float64Array(counts.length * kinds);
  if (free.length === 0) return effects;
  for (const { stratum, kind, n } of cells) shares[stratum * kinds + kind] = n / (counts[stratum] as number);
  const columns = free.map((one) => Float64Array.from(cells, ({ stratum, kind }, i) => (root[i] as number) * (Number(kind === one) - (shares[stratum * kinds + one] as number))));
  const y = Float64Array.from(cells, ({ stratum, mean }, i) => (root[i] as number) * (mean - (means[stratum] as number)));
  const whole = blockTriangle([...columns, y], cells.length), p = free.length;
  const found = solve(whole.subMatrix(0, p - 1, 0, p - 1), whole.subMatrix(0, p - 1, p, p));
  free.forEach((kind, at) => { effects[kind] = found.get(at, 0); });
  return effects;
}

/**
 * How much higher or lower everything lies in each stratum than in the usual one, kinds held alike.
 *
 * Least squares with a level for every stratum and one for every kind, from the cells' means weighted by their counts (two-way model
 * without interaction, Searle 1971, Linear Models, ch. 7), strata taken out first and QR of what is left. Levels are told around
 * the mean over all that was measured, among strata that hang together by kinds they share; a stratum that shares none has level 0.
 *
 * @param cells at most one for a stratum and kind
 * @returns the level of each stratum, in the unit of the means; 0 for a number without cells
 * @throws {RangeError} unless strata and kinds are whole numbers of at least 0, counts of at least 1, and means finite
 * @example
 * stratumLevels([{ stratum: 0, kind: 0, n: 1, mean: 1 }, { stratum: 1, kind: 0, n: 1, mean: 3 }]); // => [-1, 1]
 */
export function stratumLevels(cells: readonly Cell[]): number[] {
  for (const { stratum, kind, n } of cells) {
    requireWhole("stratumLevels", "stratum", stratum);
    requireWhole("stratumLevels", "kind", kind);
    requireWhole("stratumLevels", "n", n, 1);
  }
  requireFinite("stratumLevels", "mean", cells.map(({ mean }) => mean));
  const strata = most(cells, ({ stratum }) => stratum), kinds = most(cells, ({ kind }) => kind), stratumOf = ({ stratum }: Cell) => stratum;
  const counts = sums(strata, cells, stratumOf, ({ n }) => n), means = sums(strata, cells, stratumOf, ({ n, mean }) => n * mean).map((sum, i) => sum / (counts[i] as number));
  const parts = together(strata + kinds, cells.map(({ stratum, kind }) => [stratum, strata + kind] as const));
  const there = [...new Set(cells.map(({ kind }) => kind))].sort((a, b) => a - b), first = new Map(there.toReversed().map((kind) => [parts[strata + kind], kind]));
  const free = there.filter((kind) => first.get(parts[strata + kind]) !== kind), effects = kindEffects(cells, kinds, free, counts, means);
  const mix = sums(strata, cells, stratumOf, ({ n, kind }) => n * (effects[kind] as number)), raw = means.map((mean, i) => mean - (mix[i] as number) / (counts[i] as number));
  const all = new Map<number, [sum: number, n: number]>();
  raw.forEach((level, i) => {
    const [sum, n] = all.get(parts[i] as number) ?? [0, 0], own = counts[i] as number;
    if (own > 0) all.set(parts[i] as number, [sum + own * level, n + own]);
  });
  return Array.from(raw, (level, i) => {
    const [sum, n] = all.get(parts[i] as number) ?? [0, 0];
    return counts[i] === 0 ? 0 : level - sum / n;
  });
}
