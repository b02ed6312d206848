import { expect } from "vitest";

export { readCase, readRows } from "../reference/read-case.ts";
export type { Nested, ReferenceCase } from "../reference/read-case.ts";

/** Reads a reference value: the files write what JSON cannot say as words. */
export function numberOf(value: unknown): number {
  if (value === "Inf") return Infinity;
  if (value === "-Inf") return -Infinity;
  if (value === "NA" || value === "NaN") return NaN;
  if (typeof value !== "number") throw new RangeError(`numberOf: value must be a number of a reference case, got ${String(value)}`);
  return value;
}

export const numbersOf = (list: unknown): number[] => (list as unknown[]).map(numberOf);

/** Fails with every value that is further off than the tolerance, not only the first. */
export function expectNear(
  actual: readonly (number | null)[], expected: readonly number[], tolerance: { relative?: number; absolute?: number }, label = "",
): void {
  const off = expected.flatMap((wanted, i) => {
    const got = actual[i];
    if (Number.isNaN(wanted)) return got === null ? [] : [`${label}[${i}] ${String(got)} instead of nothing`];
    const allowed = Math.max(tolerance.absolute ?? 0, (tolerance.relative ?? 0) * Math.abs(wanted));
    const near = typeof got === "number" && (got === wanted || Math.abs(got - wanted) <= allowed);
    return near ? [] : [`${label}[${i}] ${String(got)} instead of ${wanted}`];
  });
  expect(off).toEqual([]);
  expect(actual.length, `${label} count`).toBe(expected.length);
}
