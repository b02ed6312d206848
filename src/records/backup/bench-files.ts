import type { BenchCopy, BenchStore, BenchTicket, Entry, Photo, PhotoNote } from "../bench-log/bench-store.ts";
import { BackupRefused } from "./manifest.ts";

/** Tickets at the bench and what is noted of their photos. */
export const BENCH = "bench-log.json";
const PHOTOS = "photos/";
const VERSION = 1;

/** A file of the bench log in a backup. */
export const isBenchFile = (name: string): boolean => name === BENCH || name.startsWith(PHOTOS);

type TicketText = Omit<BenchTicket, "entries"> & { readonly entries: Readonly<Record<string, Entry>> };
interface LogText { readonly bench_log: number; readonly tickets: readonly TicketText[]; readonly photos: readonly (PhotoNote & { readonly file: string })[] }

/** A name that any file system takes, and that says which ticket a photo belongs to. */
function photoName(photo: PhotoNote, tickets: readonly BenchTicket[]): string {
  const number = tickets.find(({ id }) => id === photo.ticket)?.entries.get("ticket_no")?.value ?? "no number";
  const words = `${number} ${photo.group}`.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-|-$/g, "");
  return `${PHOTOS}${words}-${photo.id}.jpg`;
}

/** What is at the bench as files for a backup; none when nothing is. */
export async function benchFiles(store: BenchStore): Promise<ReadonlyMap<string, Uint8Array>> {
  const { tickets, photos } = await store.copy(), files = new Map<string, Uint8Array>();
  if (tickets.length === 0) return files;
  const noted = photos.map(({ picture, ...note }) => {
    const file = photoName(note, tickets);
    files.set(file, picture);
    return { ...note, file };
  });
  const log: LogText = { bench_log: VERSION, tickets: tickets.map(({ entries, ...head }) => ({ ...head, entries: Object.fromEntries(entries) })), photos: noted };
  return new Map([[BENCH, new TextEncoder().encode(`${JSON.stringify(log, null, 1)}\n`)], ...files]);
}

const isText = (value: unknown): value is string => typeof value === "string";
const isTextOrNull = (value: unknown): value is string | null => value === null || isText(value);
const isEntry = (value: unknown): value is Entry => typeof value === "object" && value !== null && "value" in value && isTextOrNull(value.value) && "revision" in value && Number.isInteger(value.revision);
const isTicket = (one: Partial<TicketText>): one is TicketText =>
  isText(one.id) && isText(one.begun_at) && isTextOrNull(one.finished_at) && isTextOrNull(one.batch_id) && typeof one.entries === "object" && Object.values(one.entries).every(isEntry);
const isPhoto = (one: Partial<LogText["photos"][number]>): one is LogText["photos"][number] =>
  [one.id, one.ticket, one.group, one.taken_at, one.sha256, one.file].every(isText) && Number.isInteger(one.bytes);

function logFrom(text: string): LogText {
  const json = JSON.parse(text) as Partial<LogText> | null;
  if (typeof json?.bench_log === "number" && json.bench_log > VERSION) throw new BackupRefused("This backup's bench log was written by a newer version of Saltbench. Restore it with that version; nothing was changed here.");
  if (!Array.isArray(json?.tickets) || !json.tickets.every(isTicket) || !Array.isArray(json.photos) || !json.photos.every(isPhoto)) {
    throw new BackupRefused(`This backup is damaged: its ${BENCH} lacks what it should list.`);
  }
  return json as LogText;
}

/**
 * What was at the bench when the backup was made; null when nothing was, or nothing was kept of it.
 *
 * @param files of the backup, already held against its checksums
 * @throws {BackupRefused} when they cannot be read
 */
export function benchCopy(files: ReadonlyMap<string, Uint8Array>): BenchCopy | null {
  const text = files.get(BENCH);
  if (!text) return null;
  const { tickets, photos } = logFrom(new TextDecoder().decode(text));
  return {
    tickets: tickets.map(({ entries, ...head }) => ({ ...head, entries: new Map(Object.entries(entries)) })),
    photos: photos.map(({ file, ...note }): Photo => {
      const picture = files.get(file);
      if (!picture) throw new BackupRefused(`This backup is damaged: ${file} is missing.`);
      return { ...note, picture: picture as Uint8Array<ArrayBuffer> };
    }),
  };
}
