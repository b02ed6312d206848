import type { BenchTicket, Change, Crossed, Entries, Entry } from "./bench-store.ts";

/** The entry after a change; undefined when it is taken away. */
export function written({ value }: Change, before: Entry | undefined): Entry | undefined {
  return value === undefined ? undefined : { value, revision: (before?.revision ?? 0) + 1 };
}

/**
 * What a change meets that its writer had not seen: another window's value in the same field, unless it is the same.
 *
 * @example
 * crossed({ field: "water", value: "salt", seen: 1 }, { value: "fresh", revision: 2 }) // => { field: "water", other: "fresh" }
 */
export function crossed({ field, value, seen }: Change, before: Entry | undefined): Crossed | null {
  if (seen === null || seen === (before?.revision ?? 0) || !before || before.value === value) return null;
  return { field, other: before.value };
}

/** Entries of a ticket that begins. */
export const firstEntries = (values: Readonly<Record<string, string | null>>): Entries =>
  new Map(Object.entries(values).map(([field, value]) => [field, { value, revision: 1 }]));

/** Finished tickets that can still be looked at and opened again. */
const FINISHED_SHOWN = 30;

/** Tickets at the bench and the ones finished last, in the order they come. */
export function shownTickets<T extends Pick<BenchTicket, "id" | "finished_at">>(tickets: readonly T[]): readonly T[] {
  const finished = tickets.flatMap(({ id, finished_at }) => (finished_at === null ? [] : [{ id, finished_at }]));
  const last = new Set(finished.sort((a, b) => (a.finished_at < b.finished_at ? 1 : -1)).slice(0, FINISHED_SHOWN).map(({ id }) => id));
  return tickets.filter(({ id, finished_at }) => finished_at === null || last.has(id));
}
