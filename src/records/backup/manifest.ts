import { LEDGER_VERSION } from "../ledger/ledger.ts";

/** Newest shape of a backup; one with a higher number is refused. The second can hold a bench log with photos. */
export const BACKUP_VERSION = 2;
/** Of a backup without a bench log, which older versions can restore. */
const PLAIN_VERSION = 1;

export const MANIFEST = "manifest.json";

export interface Entry {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface Manifest {
  readonly saltbench_backup: number;
  readonly ledger_version: number;
  /** `YYYY-MM-DD` */
  readonly made_on: string;
  readonly entries: readonly Entry[];
}

/** A file that cannot be restored; nothing has changed. The message is for the owner. */
export class BackupRefused extends Error {
  override readonly name = "BackupRefused";
}

export async function entryOf(name: string, bytes: Uint8Array): Promise<Entry> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>));
  return { name, bytes: bytes.length, sha256: Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("") };
}

export function manifestText(made_on: string, entries: readonly Entry[], with_bench = false): string {
  const manifest: Manifest = { saltbench_backup: with_bench ? BACKUP_VERSION : PLAIN_VERSION, ledger_version: LEDGER_VERSION, made_on, entries };
  return `${JSON.stringify(manifest, null, 2)}\n`;
}

function parsed(text: string): Partial<Manifest> {
  try {
    const json: unknown = JSON.parse(text);
    if (typeof json === "object" && json !== null) return json;
  } catch (cause) {
    throw new BackupRefused("This backup is damaged: its manifest.json cannot be read.", { cause });
  }
  throw new BackupRefused("This backup is damaged: its manifest.json holds no manifest.");
}

const isEntry = (entry: Partial<Entry> | null): boolean =>
  typeof entry === "object" && entry !== null && typeof entry.name === "string" && Number.isInteger(entry.bytes) && typeof entry.sha256 === "string";

/**
 * Reads a manifest.
 *
 * @throws {BackupRefused} when it is none, or a newer version of the app wrote it
 */
export function manifestFrom(text: string): Manifest {
  const { saltbench_backup, ledger_version, made_on, entries } = parsed(text);
  if (typeof saltbench_backup !== "number") throw new BackupRefused("This zip file is not a backup of Saltbench.");
  if (saltbench_backup > BACKUP_VERSION || (ledger_version ?? 0) > LEDGER_VERSION) {
    throw new BackupRefused("This backup was made by a newer version of Saltbench. Restore it with that version; nothing was changed here.");
  }
  if (typeof ledger_version !== "number" || typeof made_on !== "string" || !Array.isArray(entries) || !entries.every(isEntry)) {
    throw new BackupRefused("This backup is damaged: its manifest.json lacks what it should list.");
  }
  return { saltbench_backup, ledger_version, made_on, entries };
}

/** @throws {BackupRefused} naming the entry that is missing or whose bytes are not what was written */
export async function checkEntries({ entries }: Manifest, files: ReadonlyMap<string, Uint8Array>): Promise<void> {
  for (const { name, bytes, sha256 } of entries) {
    const file = files.get(name);
    if (!file) throw new BackupRefused(`This backup is damaged: ${name} is missing. Its other files can still be brought in one by one.`);
    const now = await entryOf(name, file);
    if (now.bytes !== bytes || now.sha256 !== sha256) {
      throw new BackupRefused(`This backup is damaged: ${name} is not what was written (its checksum differs). Its other files can still be brought in one by one.`);
    }
  }
}
