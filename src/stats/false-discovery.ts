/**
 * How far each p value stands out when many were looked at: the share of false alarms one accepts by believing it and all
 * smaller ones.
 *
 * Adjusted p values of the step-up procedure of Benjamini & Hochberg (1995, JRSS B 57:289-300). A missing p value stays
 * missing and does not count as a comparison.
 *
 * @param pValues in any order
 * @returns q values in the same order, never below their p value nor above 1
 * @throws {RangeError} if a p value is outside 0…1
 * @example
 * falseDiscovery([0.01, null, 0.04, 0.03]); // => [0.03, null, 0.04, 0.04]
 */
export function falseDiscovery(pValues: readonly (number | null)[]): (number | null)[] {
  const known = pValues.flatMap((p, at) => (p === null ? [] : [{ p, at }]));
  const wrong = known.find(({ p }) => !(p >= 0 && p <= 1));
  if (wrong !== undefined) throw new RangeError(`falseDiscovery: pValues must lie in 0…1, got ${wrong.p}`);
  const adjusted: (number | null)[] = pValues.map(() => null);
  let smallest = 1;
  known.sort((a, b) => b.p - a.p).forEach(({ p, at }, i) => {
    smallest = Math.min(smallest, p * (known.length / (known.length - i)));
    adjusted[at] = smallest;
  });
  return adjusted;
}
