const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a function is largest between two points: the best of a coarse scan, then golden-section search around it
 * (Kiefer 1953, Proceedings of the AMS 4:502-506). The scan keeps a second, lower hill from being taken for the top.
 *
 * @param steps number of equal steps of the scan
 * @returns the place, to about eight digits, and the value there
 * @throws {RangeError} unless `low` is below `high`
 * @example
 * maximumBetween((x) => 3 - (x - 2) ** 2, 0, 5).value; // => 3.000000
 */
export function maximumBetween(f: (x: number) => number, low: number, high: number, steps = 24): { at: number; value: number } {
  if (!(low < high)) throw new RangeError(`maximumBetween: low must be below high, got ${low} and ${high}`);
  const width = (high - low) / steps;
  let top = low, best = -Infinity;
  for (let step = 0; step <= steps; step += 1) {
    const x = low + step * width, value = f(x);
    if (value > best) [top, best] = [x, value];
  }
  let left = Math.max(low, top - width), right = Math.min(high, top + width);
  let inner = right - GOLDEN * (right - left), outer = left + GOLDEN * (right - left);
  let atInner = f(inner), atOuter = f(outer);
  while (right - left > 1e-9 * (Math.abs(left) + Math.abs(right) + 1)) {
    if (atInner > atOuter) {
      [right, outer, atOuter] = [outer, inner, atInner];
      inner = right - GOLDEN * (right - left);
      atInner = f(inner);
    } else {
      [left, inner, atInner] = [inner, outer, atOuter];
      outer = left + GOLDEN * (right - left);
      atOuter = f(outer);
    }
  }
  const at = (left + right) / 2, value = f(at);
  return value >= best ? { at, value } : { at: top, value: best };
}
