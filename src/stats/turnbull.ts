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

/** For every line the run of candidates in which it may have failed, and those it was watched for. */
function spans(lines: readonly LifeLine[], cells: readonly { left: number; right: number }[]) {
  const firstFrom = (from: number, exact: boolean) => {
    let below = 0, above = cells.length;
    while (below < above) {
      const mid = (below + above) >> 1, cell = cells[mid] as { left: number; right: number };
      if (cell.left < from || (!exact && cell.right === from)) below = mid + 1;
      else above = mid;
    }
    return below;
  };
  return lines.map(({ low, high, entry = 0, count = 1 }) => {
    const from = firstFrom(low, low === high);
    let to = from;
    while (to < cells.length && (cells[to] as { right: number }).right <= high) to += 1;
    return { from, to, entry: entry > 0 ? firstFrom(entry, false) : 0, count };
  });
}

/** One turn of self-consistency by running sums: each line spreads its weight over where it may have failed, and unseen parts over what was cut off. */
function turn(mass: Float64Array, lines: ReturnType<typeof spans>): { next: Float64Array; logLikelihood: number } {
  const cells = mass.length, below = new Float64Array(cells + 1), inside = new Float64Array(cells + 1);
  mass.forEach((one, j) => { below[j + 1] = (below[j] as number) + one; });
  let logLikelihood = 0;
  for (const { from, to, entry, count } of lines) {
    const watched = (below[cells] as number) - (below[entry] as number), here = (below[to] as number) - (below[from] as number);
    logLikelihood += count * Math.log(here / watched);
    inside[from] = (inside[from] as number) + count / here;
    inside[to] = (inside[to] as number) - count / here;
    if (entry > 0) {
      inside[0] = (inside[0] as number) + count / watched;
      inside[entry] = (inside[entry] as number) - count / watched;
    }
  }
  const next = new Float64Array(cells);
  let running = 0, total = 0;
  for (let j = 0; j < cells; j += 1) {
    running += inside[j] as number;
    next[j] = (mass[j] as number) * running;
    total += next[j] as number;
  }
  return { next: next.map((one) => one / total), logLikelihood };
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
  const cells = candidates(lines), reach = spans(lines, cells);
  let mass: Float64Array = new Float64Array(cells.length).fill(1 / cells.length), last = -Infinity, converged = false;
  for (let turns = 0; turns < MOST_TURNS && !converged; turns += 1) {
    const { next, logLikelihood } = turn(mass, reach);
    converged = next.every((one, j) => Math.abs(one - (mass[j] as number)) < 1e-9);
    [mass, last] = [next, logLikelihood];
  }
  return { masses: cells.flatMap((cell, j) => ((mass[j] as number) > 1e-6 ? [{ ...cell, mass: mass[j] as number }] : [])), logLikelihood: last, converged };
}
