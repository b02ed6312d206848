/** Random draws from one seed; every concern of the shop has its own stream, so that a change in one leaves the others alone. */
export interface Draws {
  /** uniform in 0…1, one excluded */
  uniform(): number;
  /** whole number in 0…n − 1 */
  below(n: number): number;
  chance(share: number): boolean;
  normal(): number;
  /** log-normal by its median */
  logNormal(median: number, sigma: number): number;
  beta(a: number, b: number): number;
  poisson(mean: number): number;
  weibull(shape: number, scale: number): number;
  pick<Value>(values: readonly Value[]): Value;
  /** one of `values`, each as likely as its weight */
  weighted<Value>(values: readonly Value[], weights: readonly number[]): Value;
}

/** A power by `exp` and `log`, which are the same on every machine; `**` is not. */
export const power = (base: number, exponent: number): number => Math.exp(exponent * Math.log(base));

/** FNV-1a, to make a number of a seed and a stream's name. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) value = Math.imul(value ^ text.charCodeAt(i), 0x01000193);
  return value >>> 0;
}

/** sfc32 (Doty-Humphrey, PractRand): small, fast, passes its author's test batteries. */
function sfc32(a: number, b: number, c: number): () => number {
  let d = 1;
  const next = () => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  return next;
}

function gamma(uniform: () => number, normal: () => number, shape: number): number {
  // Marsaglia & Tsang 2000, for a shape of one or more, which is all the shop needs.
  const d = shape - 1 / 3, c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(), root = 1 + c * x, v = root * root * root;
    if (v > 0 && Math.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** The draws of one stream. */
export function draws(seed: number, stream: string): Draws {
  const uniform = sfc32(hash(`${stream}/a/${seed}`), hash(`${stream}/b/${seed}`), hash(`${stream}/c/${seed}`));
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const below = (n: number) => Math.floor(uniform() * n);
  const weighted = <Value>(values: readonly Value[], weights: readonly number[]): Value => {
    let left = uniform() * weights.reduce((sum, weight) => sum + weight, 0);
    for (const [i, weight] of weights.entries()) if ((left -= weight) < 0) return values[i] as Value;
    return values[values.length - 1] as Value;
  };
  return {
    uniform, normal, below, weighted,
    chance: (share) => uniform() < share,
    logNormal: (median, sigma) => median * Math.exp(sigma * normal()),
    beta: (a, b) => {
      const x = gamma(uniform, normal, a), y = gamma(uniform, normal, b);
      return x / (x + y);
    },
    poisson: (mean) => {
      const limit = Math.exp(-mean);
      let product = uniform(), count = 0;
      while (product > limit) { product *= uniform(); count++; }
      return count;
    },
    weibull: (shape, scale) => scale * power(-Math.log(1 - uniform()), 1 / shape),
    pick: (values) => values[below(values.length)] as (typeof values)[number],
  };
}
