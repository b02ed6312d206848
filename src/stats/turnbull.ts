import type { LifeLine } from "./life-lines.ts";
import { requireSome } from "./requirement.ts";

/** Failures lie in (left, right] with this share; `right` Infinity: never seen to fail. Inside an interval nothing is known. */
export interface FailureMass { readonly left: number; readonly right: number; readonly mass: number }

export interface Turnbull { readonly masses: readonly FailureMass[]; readonly logLikelihood: number; readonly converged: boolean }

const MOST_TURNS = 20_000;

/** Innermost intervals: a left end directly followed by a right end (Peto 1973, Applied Statistics 22:86-91). */
function candidates(lines: readonly LifeLine[]): { left: number; right: number }[] {
  const ends = lines.flatMap(({ low, high, entry = 0 }) => [{ at: low, right: low === high ? 2 : 1 }, { at: high, right: low === high ? 3 : 0 }, ...(entry > 0 ? [{ at: entry, right: 1 }] : [])]);
  // At one exposure: right ends of intervals first (they include it), then left ends, then exact failures.
  const ordered = ends.sort((a, b) => a.at - b.at || a.right - b.right), found: { left: number; right: number }[] = [];
  ordered.forEach((end, i) => {
    const next = ordered[i + 1];
    if (!next || end.right === 0 || end.right === 3 || next.right === 1 || next.right === 2) return;
    const last = found.at(-1);
    if (last?.left !== end.at || last.right !== next.at) found.push({ left: end.at, right: next.at });
  });
  return found;
}

/** For every line the run of candidates in which it may have failed, and those it was watched for; columns, as they are gone through thousands of times. */
interface Spans { readonly from: Int32Array; readonly to: Int32Array; readonly entry: Int32Array; readonly count: Float64Array }

function spans(lines: readonly LifeLine[], cells: readonly { left: number; right: number }[]): Spans {
  const firstFrom = (from: number, exact: boolean) => {
    let below = 0, above = cells.length;
    while (below < above) {
      const mid = (below + above) >> 1, cell = cells[mid] as { left: number; right: number };
      if (cell.left < from || (!exact && cell.right === from)) below = mid + 1;
      else above = mid;
    }
    return below;
  };
  const ends = lines.map(({ low, high, entry = 0, count = 1 }) => {
    const from = firstFrom(low, low === high);
    let to = from;
    while (to < cells.length && (cells[to] as { right: number }).right <= high) to += 1;
    return { from, to, entry: entry > 0 ? firstFrom(entry, false) : 0, count };
  });
  // Lines that differ only where nobody may have failed say the same.
  const alike = new Map<string, { from: number; to: number; entry: number; count: number }>();
  for (const one of ends) {
    const key = `${one.from} ${one.to} ${one.entry}`, before = alike.get(key);
    if (before) before.count += one.count;
    else alike.set(key, { ...one });
  }
  const all = [...alike.values()];
  return { from: Int32Array.from(all, (one) => one.from), to: Int32Array.from(all, (one) => one.to), entry: Int32Array.from(all, (one) => one.entry), count: Float64Array.from(all, (one) => one.count) };
}

/** Running sums that a turn needs; made once. */
interface Sums { readonly below: Float64Array; readonly inside: Float64Array; readonly next: Float64Array }

/** Each line spreads its weight over where it may have failed, and unseen parts over what was cut off. */
function spread({ from, to, entry, count }: Spans, cells: number, { below, inside }: Sums): void {
  for (let i = 0; i < count.length; i += 1) {
    const first = from[i] as number, end = to[i] as number, in_at = entry[i] as number, n = count[i] as number;
    const here = n / ((below[end] as number) - (below[first] as number));
    inside[first] = (inside[first] as number) + here;
    inside[end] = (inside[end] as number) - here;
    if (in_at === 0) continue;
    const watched = n / ((below[cells] as number) - (below[in_at] as number));
    inside[0] = (inside[0] as number) + watched;
    inside[in_at] = (inside[in_at] as number) - watched;
  }
}

/** Log-likelihood of the masses whose running sums are `below`. */
function likelihood({ from, to, entry, count }: Spans, below: Float64Array): number {
  const whole = below.at(-1) ?? NaN;
  return count.reduce((sum, n, i) => sum + n * Math.log(((below[to[i] as number] as number) - (below[from[i] as number] as number)) / (whole - (below[entry[i] as number] as number))), 0);
}

/** One turn of self-consistency by running sums; `mass` becomes the next one. @returns the most that any mass has moved */
function turn(mass: Float64Array, lines: Spans, sums: Sums): number {
  const cells = mass.length, { below, inside, next } = sums;
  inside.fill(0);
  for (let j = 0; j < cells; j += 1) below[j + 1] = (below[j] as number) + (mass[j] as number);
  spread(lines, cells, sums);
  let running = 0, total = 0, moved = 0;
  for (let j = 0; j < cells; j += 1) {
    running += inside[j] as number;
    next[j] = (mass[j] as number) * running;
    total += next[j] as number;
  }
  for (let j = 0; j < cells; j += 1) {
    const one = (next[j] as number) / total;
    moved = Math.max(moved, Math.abs(one - (mass[j] as number)));
    mass[j] = one;
  }
  return moved;
}

/**
 * Share failed by exposure without any assumption on its shape, from parts seen good and failed at inspections (Turnbull 1976,
 * Journal of the Royal Statistical Society B 38:290-295), left truncation allowed for.
 *
 * @returns masses in order of exposure, those under one in a million left out
 * @throws {RangeError} if there is no line
 * @example
 * turnbull([{ low: 0, high: 5 }, { low: 5, high: Infinity }]).masses[0]?.mass; // => 0.5000
 */
export function turnbull(lines: readonly LifeLine[]): Turnbull {
  requireSome("turnbull", "lines", lines);
  const cells = candidates(lines), reach = spans(lines, cells), mass = new Float64Array(cells.length).fill(1 / cells.length);
  const sums: Sums = { below: new Float64Array(cells.length + 1), inside: new Float64Array(cells.length + 1), next: new Float64Array(cells.length) };
  let converged = false;
  for (let turns = 0; turns < MOST_TURNS && !converged; turns += 1) converged = turn(mass, reach, sums) < 1e-9;
  const masses = cells.flatMap((cell, j) => ((mass[j] as number) > 1e-6 ? [{ ...cell, mass: mass[j] as number }] : []));
  return { masses, logLikelihood: likelihood(reach, sums.below), converged };
}
