/** Contrast and likeness of colours given as `#rrggbb`. */

export type Sight = "usual" | "protan" | "deutan" | "tritan";
type Triple = readonly [number, number, number];

/**
 * Linear RGB as seen with a missing kind of cone. Machado, Oliveira and Fernandes 2009, "A Physiologically-based Model for
 * Simulation of Color Vision Deficiency", IEEE TVCG 15(6):1291-1298, doi 10.1109/TVCG.2009.113, severity 1.0.
 */
const SEEN: Record<Exclude<Sight, "usual">, readonly Triple[]> = {
  protan: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
  deutan: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
  tritan: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
};

function linear(hex: string): Triple {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return [r, g, b];
}

const sum = (weights: Triple, colour: Triple): number => weights[0] * colour[0] + weights[1] * colour[1] + weights[2] * colour[2];

/** Contrast ratio, 1 to 21, after WCAG 2.2. */
export function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [a, b].map((hex) => sum([0.2126, 0.7152, 0.0722], linear(hex))).sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

function oklab(colour: Triple): Triple {
  // Ottosson 2020, "A perceptual color space for image processing", bottosson.github.io/posts/oklab (numbers from memory).
  const cones: Triple = [
    Math.cbrt(sum([0.4122214708, 0.5363325363, 0.0514459929], colour)),
    Math.cbrt(sum([0.2119034982, 0.6806995451, 0.1073969566], colour)),
    Math.cbrt(sum([0.0883024619, 0.2817188376, 0.6299787005], colour)),
  ];
  return [
    sum([0.2104542553, 0.793617785, -0.0040720468], cones),
    sum([1.9779984951, -2.428592205, 0.4505937099], cones),
    sum([0.0259040371, 0.7827717662, -0.808675766], cones),
  ];
}

function seen(hex: string, sight: Sight): Triple {
  const colour = linear(hex);
  if (sight === "usual") return colour;
  const [r = 0, g = 0, b = 0] = SEEN[sight].map((row) => Math.min(1, Math.max(0, sum(row, colour))));
  return [r, g, b];
}

/** How far apart two colours look, 0 to about 1, in OKLab. */
export function distance(a: string, b: string, sight: Sight): number {
  const left = oklab(seen(a, sight)), right = oklab(seen(b, sight));
  return Math.hypot(left[0] - right[0], left[1] - right[1], left[2] - right[2]);
}
