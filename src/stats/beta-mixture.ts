/** One beta distribution of a mixture: its two parameters, its weight (any scale) and ln B(a, b). */
export interface BetaPart { a: number; b: number; weight: number; logBeta: number }

/** Points of the density; with this many the limits are right to about four digits. */
const POINTS = 80;

/** Log-odds between which practically all of the mixture lies: far out on the side where a parameter is small. */
function reach(parts: readonly BetaPart[]): [number, number] {
  const heaviest = Math.max(...parts.map((part) => part.weight));
  let low = Infinity, high = -Infinity;
  for (const { a, b, weight } of parts) {
    if (weight < heaviest * 1e-4) continue;
    const middle = Math.log(a / b), width = Math.sqrt(1 / a + 1 / b);
    low = Math.min(low, middle - 4 * width - 9 / a);
    high = Math.max(high, middle + 4 * width + 9 / b);
  }
  return [low, high];
}

/** Density of the mixture's log-odds at evenly spaced points. */
function densities(parts: readonly BetaPart[], low: number, step: number): number[] {
  return Array.from({ length: POINTS }, (_, i) => {
    const x = low + i * step;
    // ln share and ln (1 − share) without the cancellation that a share near 0 or 1 would bring.
    const logShare = x > 0 ? -Math.log1p(Math.exp(-x)) : x - Math.log1p(Math.exp(x)), logRest = logShare - x;
    let sum = 0;
    for (const { a, b, weight, logBeta } of parts) sum += weight * Math.exp(a * logShare + b * logRest - logBeta);
    return sum;
  });
}

/** Mass in each cell between two points, from the cubic through its four nearest points. */
function cells(density: readonly number[], step: number): number[] {
  const at = (i: number) => density[i] ?? 0;
  return density.slice(1).map((_, i) => Math.max(0, (step / 24) * (13 * (at(i) + at(i + 1)) - at(i - 1) - at(i + 2))));
}

/**
 * Mean and equal-tailed limits of a share whose knowledge is a mixture of beta distributions.
 *
 * The mean is exact; the limits come from the density of the log-odds, added up along evenly spaced points.
 *
 * @param parts at least one, with parameters above 0
 * @param level probability between the limits
 * @returns all three in 0…1
 * @throws {RangeError} if there is no part
 * @example
 * betaMixtureInterval([{ a: 1, b: 1, weight: 3, logBeta: 0 }], 0.5); // => { mean: 0.5, low: 0.250, high: 0.750 }
 */
export function betaMixtureInterval(parts: readonly BetaPart[], level: number): { mean: number; low: number; high: number } {
  if (parts.length === 0) throw new RangeError("betaMixtureInterval: parts must not be empty, got none");
  const total = parts.reduce((sum, part) => sum + part.weight, 0);
  const mean = parts.reduce((sum, { a, b, weight }) => sum + (weight * a) / (a + b), 0) / total;
  const [from, to] = reach(parts), step = (to - from) / (POINTS - 1);
  const density = densities(parts, from, step), masses = cells(density, step);
  const whole = masses.reduce((sum, mass) => sum + mass, 0);
  const quantile = (probability: number) => {
    let left = probability * whole, i = 0;
    while (i < masses.length - 1 && left > (masses[i] as number)) { left -= masses[i] as number; i += 1; }
    const start = density[i] as number, slope = ((density[i + 1] as number) - start) / step;
    // Straight density inside the cell, scaled so that it holds the cell's mass: left = start·u + slope·u² / 2.
    const scale = (masses[i] as number) / (start * step + (slope * step ** 2) / 2), part = left / scale;
    const within = (2 * part) / (start + Math.sqrt(Math.max(0, start ** 2 + 2 * slope * part)));
    return 1 / (1 + Math.exp(-(from + i * step + within)));
  };
  return { mean, low: quantile((1 - level) / 2), high: quantile((1 + level) / 2) };
}
