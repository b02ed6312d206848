import gammaln from "@stdlib/math-base-special-gammaln";
import { requireTable } from "./requirement.ts";

/** The p value, or why there is none. */
export type FisherExact = { p: number } | { reason: "table too large" | "no counts" };

/** Half tables gone through at most: about half a second and 50 MB. */
const MOST_HALVES = 1_500_000;
/** Tables as likely as the one seen but for rounding count as equally likely (as R's fisher.test does). */
const SLACK = Math.log1p(1e-7);

/** Log-probability parts of all ways to fill some rows, by the column totals they use up. */
type Halves = Map<number, number[]>;

/** Ways to spread `left` counts over columns `column`… within what is left of each column. */
function spread(left: number, column: number, room: readonly number[], used: number[], visit: () => void): void {
  if (column === room.length - 1) {
    if (left > (room[column] as number)) return;
    used[column] = left;
    visit();
    return;
  }
  for (let count = 0; count <= Math.min(left, room[column] as number); count += 1) {
    used[column] = count;
    spread(left - count, column + 1, room, used, visit);
  }
}

/** All ways to fill `rows`; null when there are more than can be gone through. */
function halves(rows: readonly number[], columns: readonly number[], logFactorial: readonly number[]): Halves | null {
  const found: Halves = new Map(), base = Math.max(...columns) + 1;
  let count = 0;
  const fill = (row: number, room: readonly number[], log: number, key: number): void => {
    if (count > MOST_HALVES) return;
    if (row === rows.length) {
      count += 1;
      const list = found.get(key);
      if (list === undefined) found.set(key, [log]);
      else list.push(log);
      return;
    }
    const used = room.map(() => 0);
    spread(rows[row] as number, 0, room, used, () => {
      let next = log + (logFactorial[rows[row] as number] as number), place = 1, nextKey = key;
      for (const cell of used) { next -= logFactorial[cell] as number; nextKey += cell * place; place *= base; }
      fill(row + 1, room.map((space, j) => space - (used[j] as number)), next, nextKey);
    });
  };
  fill(0, columns, 0, 0);
  return count > MOST_HALVES ? null : found;
}

/** Probability of all pairs of halves that fit together and are, together, no likelier than `limit` (a logarithm). */
function pairedBelow(first: Halves, second: Halves, whole: number, limit: number, constant: number): number {
  let p = 0;
  for (const [key, logs] of first) {
    const fitting = second.get(whole - key);
    if (fitting === undefined) continue;
    const rising = logs.sort((a, b) => a - b), falling = fitting.sort((a, b) => b - a);
    let reached = 0, mass = 0;
    // The rarer one half is, the more of the other half it may be combined with.
    for (const other of falling) {
      while (reached < rising.length && (rising[reached] as number) + other <= limit) {
        mass += Math.exp((rising[reached] as number) - (rising[0] as number));
        reached += 1;
      }
      if (reached > 0) p += mass * Math.exp((rising[0] as number) + other + constant);
    }
  }
  return p;
}

/**
 * Exact two-sided test that rows and columns of a table are unrelated: probability, given both margins, of all tables no
 * likelier than the one seen (Fisher 1935; Freeman & Halton 1951, Biometrika 38:141-149).
 *
 * The rows are split in two halves, each half is gone through completely, and halves that fit together are counted by
 * their sorted probabilities; a table with too many halves gives a reason instead.
 *
 * @param table counts by row, then by column
 * @throws {RangeError} if the table is not rectangular or a count is not a whole number ≥ 0
 * @example
 * fisherExact([[3, 1], [1, 3]]); // => { p: 0.4857 }
 * fisherExact([[0, 0], [0, 0]]); // => { reason: "no counts" }
 */
export function fisherExact(table: readonly (readonly number[])[]): FisherExact {
  requireTable("fisherExact", table);
  const across = table[0]?.length ?? 0;
  // Filling short rows takes fewer steps: the side with more entries becomes the rows.
  const lying = across > table.length ? Array.from({ length: across }, (_, j) => table.map((row) => row[j] as number)) : table;
  const rows = lying.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columns = (lying[0] ?? []).map((_, j) => lying.reduce((sum, row) => sum + (row[j] as number), 0));
  const total = rows.reduce((sum, count) => sum + count, 0);
  if (total === 0) return { reason: "no counts" };
  const base = Math.max(...columns) + 1;
  if (base ** columns.length > Number.MAX_SAFE_INTEGER) return { reason: "table too large" };
  const logFactorial = Array.from({ length: total + 1 }, (_, k) => gammaln(k + 1));
  const half = Math.ceil(rows.length / 2);
  const first = halves(rows.slice(0, half), columns, logFactorial);
  const second = first && halves(rows.slice(half), columns, logFactorial);
  if (first === null || second === null) return { reason: "table too large" };
  const seen = lying.reduce((log, row, i) => row.reduce((left, count) => left - (logFactorial[count] as number), log + (logFactorial[rows[i] as number] as number)), 0);
  const constant = columns.reduce((log, count) => log + (logFactorial[count] as number), 0) - (logFactorial[total] as number);
  const whole = columns.reduce((key, count, j) => key + count * base ** j, 0);
  return { p: Math.min(1, pairedBelow(first, second, whole, seen + SLACK, constant)) };
}
