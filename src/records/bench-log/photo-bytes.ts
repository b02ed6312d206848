import type { PhotoNote } from "./bench-store.ts";
import { PhotoDamaged } from "./bench-store.ts";

/** SHA-256 as hex. */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** What is noted of a new picture. */
export async function photoNote(ticket: string, group: string, picture: Uint8Array<ArrayBuffer>): Promise<PhotoNote> {
  return { id: crypto.randomUUID(), ticket, group, taken_at: new Date().toISOString(), bytes: picture.length, sha256: await sha256(picture) };
}

/** @throws {PhotoDamaged} when the bytes are missing or not those that were noted */
export async function checkedPicture(note: PhotoNote, picture: Uint8Array<ArrayBuffer> | undefined): Promise<Uint8Array<ArrayBuffer>> {
  if (!picture || (await sha256(picture)) !== note.sha256) throw new PhotoDamaged();
  return picture;
}
