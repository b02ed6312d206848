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
