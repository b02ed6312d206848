import { requireFinite, requirePositive } from "./requirement.ts";

export interface IsotonicPoint { readonly x: number; readonly y: number; readonly weight: number }

/** Points of one x put together, in order of x. */
function tied(points: readonly IsotonicPoint[]): IsotonicPoint[] {
  const found = new Map<number, { sum: number; weight: number }>();
  for (const { x, y, weight } of points) {
    const at = found.get(x);
    found.set(x, { sum: (at?.sum ?? 0) + weight * y, weight: (at?.weight ?? 0) + weight });
  }
  return [...found].map(([x, { sum, weight }]) => ({ x, y: sum / weight, weight })).sort((a, b) => a.x - b.x);
}

/**
 * The rising (or falling) steps nearest to points: weighted least squares by pooling adjacent violators (Ayer, Brunk, Ewing, Reid &
 * Silverman 1955, Annals of Mathematical Statistics 26:641-647). For shares failed at inspections it is the maximum-likelihood curve
 * without any assumption on its shape.
 *
 * @returns one point for each x, with the pooled y and the weight at that x
 * @throws {RangeError} if a value is not finite or a weight not above 0
 * @example
 * isotonic([{ x: 1, y: 1, weight: 1 }, { x: 2, y: 0, weight: 3 }]).map(({ y }) => y); // => [0.25, 0.25]
 */
export function isotonic(points: readonly IsotonicPoint[], way: "increasing" | "decreasing" = "increasing"): IsotonicPoint[] {
  requireFinite("isotonic", "points", points.flatMap(({ x, y }) => [x, y]));
  points.forEach(({ weight }) => { requirePositive("isotonic", "weight", weight); });
  const sign = way === "increasing" ? 1 : -1, ordered = tied(points), blocks: { y: number; weight: number; many: number }[] = [];
  for (const { y, weight } of ordered) {
    let block = { y, weight, many: 1 };
    for (let last = blocks.at(-1); last && sign * last.y >= sign * block.y; last = blocks.at(-1)) {
      blocks.pop();
      const both = last.weight + block.weight;
      block = { y: (last.y * last.weight + block.y * block.weight) / both, weight: both, many: last.many + block.many };
    }
    blocks.push(block);
  }
  const levels = blocks.flatMap(({ y, many }) => Array.from({ length: many }, () => y));
  return ordered.map((point, i) => ({ ...point, y: levels[i] as number }));
}
