/**
 * The middle of some measurements; with an even number of them, the mean of the two in the middle.
 *
 * @throws {RangeError} if there is none
 * @example
 * median([3, 1, 10]); // => 3
 */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)], high = sorted[Math.ceil((sorted.length - 1) / 2)];
  if (low === undefined || high === undefined) throw new RangeError("median: values must hold at least one number, got none");
  return (low + high) / 2;
}
