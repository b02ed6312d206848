/** Something written about a ticket. `value` null says that it was asked and is not known; what was never asked has no entry. */
export interface Entry {
  readonly value: string | null;
  /** Goes up by one with every writing, so that a window can tell whether another wrote meanwhile. */
  readonly revision: number;
}

/** By the names of `fields.ts`. */
export type Entries = ReadonlyMap<string, Entry>;

/** What becomes of a field: its new value, null for not known, undefined to take the entry away. */
export interface Change {
  readonly field: string;
  readonly value: string | null | undefined;
  /** Revision of the entry that the writer saw, 0 for none; null writes whatever stands there. */
  readonly seen: number | null;
}

/** What another window had written where this one wrote now. */
export interface Crossed {
  readonly field: string;
  readonly other: string | null;
}

export interface BenchTicket {
  readonly id: string;
  /** ISO time. */
  readonly begun_at: string;
  /** ISO time the ticket went into the records; null while it is at the bench. */
  readonly finished_at: string | null;
  /** The import it went in with; null while it is at the bench for the first time. */
  readonly batch_id: string | null;
  readonly entries: Entries;
}

export interface PhotoNote {
  readonly id: string;
  readonly ticket: string;
  /** Group of parts it shows, or `reel`. */
  readonly group: string;
  /** ISO time. */
  readonly taken_at: string;
  readonly bytes: number;
  /** Of the picture's bytes, hex. */
  readonly sha256: string;
}

export interface Photo extends PhotoNote {
  /** JPEG. */
  readonly picture: Uint8Array<ArrayBuffer>;
}

/** All of a bench log, as a backup holds it. */
export interface BenchCopy {
  readonly tickets: readonly BenchTicket[];
  readonly photos: readonly Photo[];
}

/** The ticket was finished or thrown away, here or in another window: what was written last is not kept. */
export class TicketClosed extends Error {
  override readonly name = "TicketClosed";

  constructor(message = "This ticket was finished or thrown away in another window. What you wrote last is not kept.") {
    super(message);
  }
}

/** A picture's bytes are not what was stored. */
export class PhotoDamaged extends Error {
  override readonly name = "PhotoDamaged";

  constructor() {
    super("This photo has changed on the disk and cannot be shown.");
  }
}

/**
 * Tickets in the making, apart from the records until they are finished, and the photos kept with them.
 *
 * Each writing is one transaction that is on the disk when the promise resolves; windows tell each other.
 *
 * @throws {LedgerFull} {LedgerNewer} {LedgerUnavailable} as the ledger does
 */
export interface BenchStore {
  /** False where the browser gives no storage: all is gone with the window. */
  readonly kept: boolean;
  /** All that are at the bench and those finished last, oldest first. */
  tickets(): Promise<readonly BenchTicket[]>;
  /** Null when it was thrown away. */
  ticket(id: string): Promise<BenchTicket | null>;
  begin(values: Readonly<Record<string, string | null>>): Promise<BenchTicket>;
  /**
   * Writes fields, all or none; what is written last stands.
   *
   * @returns what another window had written meanwhile in the same fields
   * @throws {TicketClosed}
   */
  write(id: string, changes: readonly Change[]): Promise<readonly Crossed[]>;
  /**
   * Marks a ticket as gone into the records, with the import it is in.
   *
   * @param same whether what is written is still what went in; it cannot wait for anything
   * @returns false where it is not: then the ticket stays at the bench, as one that was opened again to be corrected
   * @throws {TicketClosed}
   */
  finish(id: string, batch_id: string, same?: (entries: Entries) => boolean): Promise<boolean>;
  /** Does work on a ticket while no other window does such work on it. */
  alone<T>(id: string, work: () => Promise<T>): Promise<T>;
  /** Puts a finished ticket back on the bench, as it was. */
  reopen(id: string): Promise<void>;
  /** Throws a ticket away, with its photos. */
  remove(id: string): Promise<void>;
  /** @throws {TicketClosed} when the ticket is gone */
  addPhoto(ticket: string, group: string, picture: Uint8Array<ArrayBuffer>): Promise<PhotoNote>;
  photos(ticket: string): Promise<readonly PhotoNote[]>;
  /** @throws {PhotoDamaged} if a single bit differs */
  picture(photo: PhotoNote): Promise<Uint8Array<ArrayBuffer>>;
  removePhoto(photo: PhotoNote): Promise<void>;
  copy(): Promise<BenchCopy>;
  /** Puts a copy in the place of everything, in one transaction. */
  replaceAll(copy: BenchCopy): Promise<void>;
  clear(): Promise<void>;
  /** Calls back when this window or another changed something; returns the way to stop. */
  onChange(callback: () => void): () => void;
}
