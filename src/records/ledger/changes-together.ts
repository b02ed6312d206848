type Counts = ReadonlyMap<string, number>;

function counts(list: readonly unknown[]): Counts {
  const found = new Map<string, number>();
  for (const one of list) found.set(JSON.stringify(one), (found.get(JSON.stringify(one)) ?? 0) + 1);
  return found;
}

/** How often an entry stands once both changes are made: one that both windows added, or took out, is added or taken out once. */
function together(seen: number, wanted: number, kept: number): number {
  if (wanted >= seen && kept >= seen) return Math.max(wanted, kept);
  if (wanted <= seen && kept <= seen) return Math.min(wanted, kept);
  return Math.max(0, wanted + kept - seen);
}

/**
 * A list as two windows leave it that changed it at once: what either added is in, what either took out is not, and nothing is
 * in twice because both added it. Entries are told apart by what stands in them.
 *
 * @param seen the list this window began with
 * @param wanted what it makes of it
 * @param kept what stands there now, perhaps from another window
 * @returns `wanted` where nobody else wrote; else `kept` with this window's changes, those it added last
 * @example
 * listTogether(["a", "b"], ["b", "c"], ["a", "b", "d"]); // => ["b", "d", "c"]
 */
export function listTogether<T>(seen: readonly T[], wanted: readonly T[], kept: readonly T[]): readonly T[] {
  if (JSON.stringify(seen) === JSON.stringify(kept)) return wanted;
  const [before, ours, theirs] = [counts(seen), counts(wanted), counts(kept)], left = new Map<string, number>();
  for (const text of new Set([...ours.keys(), ...theirs.keys()])) left.set(text, together(before.get(text) ?? 0, ours.get(text) ?? 0, theirs.get(text) ?? 0));
  const there = (one: T) => {
    const text = JSON.stringify(one), more = left.get(text) ?? 0;
    left.set(text, more - 1);
    return more > 0;
  };
  // What stands there keeps its place; what is new comes after it.
  return [...kept.filter(there), ...wanted.filter(there)];
}

/**
 * Values by name as two windows leave them that changed some at once: this window's changes stand, all others are as kept.
 *
 * @example
 * valuesTogether({ a: 1, b: 1 }, { a: 2, b: 1 }, { a: 1, b: 3 }); // => { a: 2, b: 3 }
 */
export function valuesTogether<T extends object>(seen: T, wanted: T, kept: T): T {
  const changed = (Object.keys(wanted) as (keyof T)[]).filter((name) => wanted[name] !== seen[name]);
  return { ...kept, ...Object.fromEntries(changed.map((name) => [name, wanted[name]])) };
}
