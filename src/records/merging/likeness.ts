/**
 * How many letters have to be put in, left out, changed or swapped with their neighbour to make one word of the other.
 *
 * Optimal string alignment distance (Damerau 1964, Communications of the ACM 7:171, with each piece changed once).
 *
 * @param most counting stops above it
 * @returns the distance, or `most + 1` when it is larger
 * @example
 * lettersApart("winbeck", "whinbeck", 2) // => 1
 */
export function lettersApart(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [], row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, (before[j - 2] ?? 0) + 1);
      next.push(least);
    }
    [before, row] = [row, next];
  }
  return Math.min(row[b.length] ?? 0, most + 1);
}

/** Letters two words of this length may be apart and still be one word misspelt: none in short ones, two from seven letters. */
export function lettersAllowed(length: number): number {
  return length < 4 ? 0 : length < 7 ? 1 : 2;
}
