import type { BenchStore, BenchTicket, Crossed, Entries } from "../../records/bench-log/bench-store.ts";
import { TicketClosed } from "../../records/bench-log/bench-store.ts";
import { fieldsOf, fineFields } from "../../records/bench-log/found.ts";
import type { FoundLine } from "../../records/bench-log/fields.ts";
import { sentence } from "../../ui/trouble.ts";
import { NONE_WAITING, stillWaiting, waitingWith, withWaiting, type Waiting } from "./waiting-fields.ts";

/** Another window's value in a field where this window's stands now. */
export interface Overwritten extends Crossed {
  readonly ours: string | null;
}

/** A ticket on the screen: every field goes to the disk as it changes, one writing after the other. */
export class OpenTicket {
  /** Null until it was read, and when it is gone. */
  ticket = $state.raw<BenchTicket | null>(null);
  status = $state<"opening" | "open" | "gone">("opening");
  /** Why the last writing is not on the disk, else null. */
  fault = $state<string | null>(null);
  overwritten = $state.raw<Overwritten | null>(null);
  private waiting = $state.raw<Waiting>(NONE_WAITING);
  #busy = false;
  /** Another window wrote while this one did. */
  #behind = false;

  /** All that is written, also what is on its way to the disk. */
  readonly entries: Entries = $derived(withWaiting(this.ticket?.entries, this.waiting));
  readonly saved = $derived(this.waiting.size === 0);
  /** What is not on the disk, for when it cannot get there. */
  readonly unsaved = $derived([...this.waiting.values()].map(({ field, value }) => ({ field, value: value ?? null })));

  constructor(readonly store: BenchStore, readonly id: string) {}

  /** Reads the ticket and follows what other windows write; returns the way to stop. */
  follow(): () => void {
    const read = () => {
      if (this.#busy) this.#behind = true;
      else void this.#read().catch((error: unknown) => { this.fault = sentence(error); });
    };
    read();
    return this.store.onChange(read);
  }

  /** "" where nothing is written or it is not known. */
  text(field: string): string { return this.entries.get(field)?.value ?? ""; }

  /** True when it was asked and is not known. */
  isUnknown(field: string): boolean { return this.entries.get(field)?.value === null; }

  set(field: string, value: string | null | undefined): void { this.setAll([[field, value]]); }

  setAll(values: readonly (readonly [field: string, value: string | null | undefined])[]): void {
    this.waiting = waitingWith(this.waiting, values.map(([field, value]) => ({ field, value, seen: this.#seen(field) })));
    void this.#send();
  }

  /** Writes without asking what stood there: for what the app notes by itself. */
  note(field: string, value: string): void {
    this.waiting = waitingWith(this.waiting, [{ field, value, seen: null }]);
    void this.#send();
  }

  allFine(positions: readonly string[]): void { this.setAll(positions.flatMap(fineFields)); }

  takeAway(lines: readonly FoundLine[]): void { this.setAll(lines.flatMap(fieldsOf).filter((field) => this.entries.has(field)).map((field) => [field, undefined] as const)); }

  /** Writes again what could not be written. */
  retry(): void { void this.#send(); }

  /** Resolves when nothing waits. @throws {Error} when something cannot be written */
  async settled(): Promise<void> {
    while (this.#busy) await new Promise((done) => setTimeout(done, 5));
    if (this.waiting.size > 0) throw new Error(this.fault ?? "something is not on the disk yet");
  }

  #seen(field: string): number { return this.ticket?.entries.get(field)?.revision ?? 0; }

  async #read(): Promise<void> {
    this.ticket = await this.store.ticket(this.id);
    this.status = this.ticket ? "open" : "gone";
  }

  async #send(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    try {
      while (this.waiting.size > 0 || this.#behind) await this.#sendOnce();
      this.fault = null;
    } catch (error) {
      this.fault = sentence(error);
      if (error instanceof TicketClosed) await this.#read();
    } finally {
      this.#busy = false;
    }
  }

  /** Writes what waits now; what changes meanwhile waits for the next round. */
  async #sendOnce(): Promise<void> {
    const changes = [...this.waiting.values()], [crossed] = changes.length > 0 ? await this.store.write(this.id, changes) : [];
    this.#behind = false;
    await this.#read();
    this.waiting = stillWaiting(this.waiting, changes, (field) => this.#seen(field));
    if (crossed) this.overwritten = { ...crossed, ours: changes.find(({ field }) => field === crossed.field)?.value ?? null };
  }
}
