/**
 * The same work, done once for each object and kept as long as the object is there: for what is asked of the same rows again and again.
 * The object must not change.
 *
 * @example
 * const parts = keptWith((lines: readonly number[]) => lines.reduce((sum, one) => sum + one, 0));
 * parts([1, 2, 3]); // => 6
 */
export function keptWith<Of extends object, Found>(work: (of: Of) => Found): (of: Of) => Found {
  const known = new WeakMap<Of, { readonly found: Found }>();
  return (of) => {
    const kept = known.get(of) ?? { found: work(of) };
    known.set(of, kept);
    return kept.found;
  };
}
