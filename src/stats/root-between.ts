/**
 * Where a continuous function crosses zero between two points at which it has unlike signs.
 *
 * Chandrupatla (1997, Advances in Engineering Software 28:145-149): inverse quadratic steps where they can be trusted,
 * halving elsewhere, so it never leaves the bracket.
 *
 * @param digits relative width of the answer
 * @returns the crossing
 * @throws {RangeError} if the signs at `low` and `high` are alike or a value is not a number
 * @example
 * rootBetween((x) => x * x - 2, 0, 2); // => 1.414213562373
 */
export function rootBetween(f: (x: number) => number, low: number, high: number, digits = 1e-15): number {
  let a = high, b = low, fa = f(a), fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0) && Math.sign(fa) * Math.sign(fb) !== -1) {
    throw new RangeError(`rootBetween: f must have unlike signs at ${low} and ${high}, got ${fb} and ${fa}`);
  }
  let step = 0.5;
  for (let turn = 0; turn < 200; turn += 1) {
    const x = a + step * (b - a), fx = f(x);
    const [c, fc] = Math.sign(fx) === Math.sign(fa) ? [a, fa] : [b, fb];
    if (Math.sign(fx) !== Math.sign(fa)) [b, fb] = [a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const least = (digits * Math.abs(best) + Number.MIN_VALUE) / Math.abs(b - a);
    if (least > 0.5 || fa === 0) return best;
    const xi = (a - b) / (c - b), phi = (fa - fb) / (fc - fb);
    const trusted = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
    const inverse = (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
    step = Math.min(1 - least, Math.max(least, trusted ? inverse : 0.5));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
