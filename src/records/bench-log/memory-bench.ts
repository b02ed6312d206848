import type { BenchStore, BenchTicket, Entry, Photo } from "./bench-store.ts";
import { TicketClosed } from "./bench-store.ts";
import { checkedPicture, photoNote } from "./photo-bytes.ts";
import { crossed, firstEntries, shownTickets, written } from "./written.ts";

/** What several windows without a disk look at together, in tests. */
export class MemoryBenchShelf {
  readonly tickets = new Map<string, BenchTicket>();
  readonly photos = new Map<string, Photo>();
  readonly listeners = new Set<() => void>();
  /** The last work done alone on each ticket. */
  readonly turns = new Map<string, Promise<unknown>>();
}

/** A bench log that is gone with the window: where the browser gives no storage, and for tests. It behaves as the browser's does. */
export function openMemoryBench(shelf = new MemoryBenchShelf()): BenchStore {
  const changed = () => shelf.listeners.forEach((callback) => callback());
  function put(id: string, change: (ticket: BenchTicket) => BenchTicket, atBench: boolean): void {
    const ticket = shelf.tickets.get(id);
    if (!ticket || (atBench && ticket.finished_at !== null)) throw new TicketClosed();
    shelf.tickets.set(id, change(ticket));
    changed();
  }
  const notes = (ticket: string) => [...shelf.photos.values()].filter((photo) => photo.ticket === ticket)
    .map(({ picture: _, ...note }) => note);
  return {
    kept: false,
    tickets: async () => shownTickets([...shelf.tickets.values()]),
    ticket: async (id) => shelf.tickets.get(id) ?? null,
    async begin(values) {
      const ticket: BenchTicket = { id: crypto.randomUUID(), begun_at: new Date().toISOString(), finished_at: null, batch_id: null, entries: firstEntries(values) };
      shelf.tickets.set(ticket.id, ticket);
      changed();
      return ticket;
    },
    async write(id, changes) {
      const entries = new Map<string, Entry>(shelf.tickets.get(id)?.entries), met = [];
      for (const change of changes) {
        const before = entries.get(change.field), after = written(change, before);
        met.push(crossed(change, before));
        if (after) entries.set(change.field, after);
        else entries.delete(change.field);
      }
      put(id, (ticket) => ({ ...ticket, entries }), true);
      return met.filter((one) => one !== null);
    },
    async finish(id, batch_id, same = () => true) {
      const done = same(shelf.tickets.get(id)?.entries ?? new Map<string, Entry>());
      put(id, (ticket) => ({ ...ticket, batch_id, finished_at: done ? new Date().toISOString() : null }), true);
      return done;
    },
    alone(id, work) {
      const turn = (shelf.turns.get(id) ?? Promise.resolve()).then(work);
      shelf.turns.set(id, turn.catch(() => undefined));
      return turn;
    },
    reopen: async (id) => put(id, (ticket) => ({ ...ticket, finished_at: null }), false),
    async remove(id) {
      shelf.tickets.delete(id);
      for (const { id: photo } of notes(id)) shelf.photos.delete(photo);
      changed();
    },
    async addPhoto(ticket, group, picture) {
      const note = await photoNote(ticket, group, picture);
      put(ticket, (one) => one, false);
      shelf.photos.set(note.id, { ...note, picture });
      changed();
      return note;
    },
    photos: async (ticket) => notes(ticket),
    picture: async (photo) => checkedPicture(photo, shelf.photos.get(photo.id)?.picture),
    async removePhoto({ id }) {
      shelf.photos.delete(id);
      changed();
    },
    copy: async () => ({ tickets: [...shelf.tickets.values()], photos: [...shelf.photos.values()] }),
    async replaceAll({ tickets, photos }) {
      shelf.tickets.clear();
      shelf.photos.clear();
      for (const ticket of tickets) shelf.tickets.set(ticket.id, ticket);
      for (const photo of photos) shelf.photos.set(photo.id, photo);
      changed();
    },
    async clear() {
      shelf.tickets.clear();
      shelf.photos.clear();
      changed();
    },
    onChange(callback) {
      shelf.listeners.add(callback);
      return () => void shelf.listeners.delete(callback);
    },
  };
}
