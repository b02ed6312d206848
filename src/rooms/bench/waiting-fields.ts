import type { Change, Entries, Entry } from "../../records/bench-log/bench-store.ts";

/** Changes that are not on the disk yet, by field. */
export type Waiting = ReadonlyMap<string, Change>;

export const NONE_WAITING: Waiting = new Map();

/** What stands on the screen: what is kept, and over it what waits. */
export function withWaiting(kept: Entries | undefined, waiting: Waiting): Entries {
  const all = new Map<string, Entry>(kept);
  for (const { field, value } of waiting.values()) {
    if (value === undefined) all.delete(field);
    else all.set(field, { value, revision: all.get(field)?.revision ?? 0 });
  }
  return all;
}

/** More changes; of a field that waits already the revision its writer saw first stands. */
export function waitingWith(waiting: Waiting, changes: readonly Change[]): Waiting {
  const all = new Map(waiting);
  for (const change of changes) all.set(change.field, { ...change, seen: all.get(change.field)?.seen ?? change.seen });
  return all;
}

/** What is left when `done` is on the disk: what changed meanwhile, now against the revision just written. */
export function stillWaiting(waiting: Waiting, done: readonly Change[], revision: (field: string) => number): Waiting {
  const written = new Map(done.map((change) => [change.field, change]));
  const left = [...waiting].filter(([field, { value }]) => !written.has(field) || written.get(field)?.value !== value);
  return new Map(left.map(([field, change]) => [field, written.has(field) && change.seen !== null ? { ...change, seen: revision(field) } : change]));
}
