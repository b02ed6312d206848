/** Rows by a key, keys in the order they first come, rows in theirs. */
export function grouped<Key, Value>(rows: readonly Value[], key: (row: Value) => Key): Map<Key, Value[]> {
  const found = new Map<Key, Value[]>();
  for (const row of rows) {
    const at = key(row), group = found.get(at);
    if (group) group.push(row);
    else found.set(at, [row]);
  }
  return found;
}

/**
 * Rows alike in all of these, groups in the order they first come, rows in theirs. A key of several parts need not become one text for
 * every row, which takes longer than all else.
 *
 * @example
 * groupsOf([{ a: 1, b: 1 }, { a: 1, b: 2 }, { a: 1, b: 1 }], (row) => row.a, (row) => row.b).length; // => 2
 */
export function groupsOf<Value>(rows: readonly Value[], ...keys: readonly ((row: Value) => unknown)[]): Value[][] {
  const top = new Map<unknown, unknown>(), groups: Value[][] = [], inner = keys.slice(0, -1), last = keys.at(-1);
  for (const row of rows) {
    let at = top;
    for (const key of inner) at = below(at, key(row));
    const key = last?.(row), group = at.get(key) as Value[] | undefined;
    if (group) group.push(row);
    else {
      const begun = [row];
      at.set(key, begun);
      groups.push(begun);
    }
  }
  return groups;
}

/**
 * The number of each row's group, groups numbered from 0 in the order they first come.
 *
 * @example
 * groupNumbers([{ a: "x" }, { a: "y" }, { a: "x" }], (row) => row.a)[2]; // => 0
 */
export function groupNumbers<Value>(rows: readonly Value[], ...keys: readonly ((row: Value) => unknown)[]): Int32Array {
  const numbers = new Int32Array(rows.length), places = Array.from(rows, (_, at) => at), of = keys.map((key) => (at: number) => key(rows[at] as Value));
  groupsOf(places, ...of).forEach((group, number) => { for (const at of group) numbers[at] = number; });
  return numbers;
}

function below(maps: Map<unknown, unknown>, key: unknown): Map<unknown, unknown> {
  const known = maps.get(key) as Map<unknown, unknown> | undefined, found = known ?? new Map<unknown, unknown>();
  if (!known) maps.set(key, found);
  return found;
}
