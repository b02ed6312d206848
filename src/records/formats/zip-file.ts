import { inflatedBytes, plainBytes } from "./blob-bytes.ts";
import type { OnBytes } from "./blob-bytes.ts";
import { crc32 } from "./crc32.ts";
import { DAMAGED_WORKBOOK, LIMITS, Unreadable } from "./unreadable.ts";

/** One file in a zip archive, as the archive's directory says. */
export interface ZipEntry {
  readonly name: string;
  /** 0 stored, 8 deflated; others are not read. */
  readonly method: number;
  readonly packed_bytes: number;
  readonly bytes: number;
  /** Check value of its bytes unpacked. */
  readonly crc: number;
  /** Place of its local heading in the archive. */
  readonly at: number;
  readonly is_locked: boolean;
}

/** Signatures and sizes in bytes, by the published format (PKWARE APPNOTE 6.3.10, sections 4.3.7, 4.3.12 to 4.3.16). */
const END = { sign: 0x06054b50, bytes: 22 }, ENTRY = { sign: 0x02014b50, bytes: 46 }, LOCAL = { sign: 0x04034b50, bytes: 30 };
const LOCATOR64 = { sign: 0x07064b50, bytes: 20 }, END64 = { sign: 0x06064b50, bytes: 56 };
const COMMENT_BYTES = 65_535, NOT_HERE = 0xffffffff, MANY = 0xffff, EXTRA64 = 1;
const DIRECTORY_BYTES = 16 * 1024 ** 2;

const bytesOf = async (blob: Blob, from: number, to: number) => new DataView(await blob.slice(Math.max(0, from), to).arrayBuffer());
const whole = (view: DataView, at: number) => Number(view.getBigUint64(at, true));

interface Directory {
  readonly at: number;
  readonly bytes: number;
  /** Files it lists; null where the number did not fit. */
  readonly files: number | null;
}

/** Archives with many or large files say where the directory is in a second place. */
async function directory64(blob: Blob, end_at: number): Promise<Directory | null> {
  const locator = await bytesOf(blob, end_at - LOCATOR64.bytes, end_at);
  if (locator.byteLength < LOCATOR64.bytes || locator.getUint32(0, true) !== LOCATOR64.sign) return null;
  const at = whole(locator, 8), end = await bytesOf(blob, at, at + END64.bytes);
  if (end.byteLength < END64.bytes || end.getUint32(0, true) !== END64.sign) return null;
  return { bytes: whole(end, 40), at: whole(end, 48), files: whole(end, 32) };
}

async function directoryOf(blob: Blob): Promise<Directory> {
  const from = Math.max(0, blob.size - END.bytes - COMMENT_BYTES), tail = await bytesOf(blob, from, blob.size);
  for (let at = tail.byteLength - END.bytes; at >= 0; at -= 1) {
    if (tail.getUint32(at, true) !== END.sign) continue;
    const files = tail.getUint16(at + 10, true), is_many = files === MANY;
    const found = { bytes: tail.getUint32(at + 12, true), at: tail.getUint32(at + 16, true), files: is_many ? null : files };
    const is64 = found.at === NOT_HERE || found.bytes === NOT_HERE || is_many;
    return (is64 ? await directory64(blob, from + at) : null) ?? found;
  }
  throw new Unreadable(DAMAGED_WORKBOOK);
}

/** Sizes and place that did not fit stand behind the name, only those and in this order. */
function withLarge(entry: ZipEntry, extra: DataView): ZipEntry {
  const large = { bytes: entry.bytes, packed_bytes: entry.packed_bytes, at: entry.at };
  for (let at = 0; at + 4 <= extra.byteLength; at += 4 + extra.getUint16(at + 2, true)) {
    if (extra.getUint16(at, true) !== EXTRA64) continue;
    let next = at + 4;
    for (const key of ["bytes", "packed_bytes", "at"] as const) {
      if (large[key] !== NOT_HERE || next + 8 > extra.byteLength) continue;
      large[key] = whole(extra, next);
      next += 8;
    }
  }
  return { ...entry, ...large };
}

/** Some programs name the parts of a workbook as Windows does. */
const nameOf = ({ buffer }: DataView, at: number, bytes: number) => new TextDecoder().decode(new Uint8Array(buffer, at, bytes)).replaceAll("\\", "/");

function entryAt(view: DataView, at: number): { entry: ZipEntry; next: number } {
  if (at + ENTRY.bytes > view.byteLength || view.getUint32(at, true) !== ENTRY.sign) throw new Unreadable(DAMAGED_WORKBOOK);
  const name_bytes = view.getUint16(at + 28, true), extra_bytes = view.getUint16(at + 30, true), comment_bytes = view.getUint16(at + 32, true);
  const name_at = at + ENTRY.bytes, extra_at = name_at + name_bytes, next = extra_at + extra_bytes + comment_bytes;
  if (next > view.byteLength) throw new Unreadable(DAMAGED_WORKBOOK);
  const entry = {
    name: nameOf(view, name_at, name_bytes),
    is_locked: (view.getUint16(at + 8, true) & 1) === 1,
    method: view.getUint16(at + 10, true),
    packed_bytes: view.getUint32(at + 20, true),
    bytes: view.getUint32(at + 24, true),
    crc: view.getUint32(at + 16, true),
    at: view.getUint32(at + 42, true),
  };
  return { entry: withLarge(entry, new DataView(view.buffer, extra_at, extra_bytes)), next };
}

/** Deflate makes at most 258 bytes out of two bits (RFC 1951, 3.2.5). */
const DENSEST = 258 * 4, OVERHEAD = 64;

/** Whether a file says that it unpacks to more than any packing can hold: room for it would be made for nothing. */
export const isTooDense = (packed: number, unpacked: number): boolean => unpacked > packed * DENSEST + OVERHEAD;

/** Two files of one name: which of them counts would hang on the program that reads. */
const TWICE = "Two files in this workbook bear one name, which no spreadsheet program writes; open it, save it again and bring that.";

/** A file bears its name in the directory and before its bytes; where the two differ one of them is damaged. */
async function checkName(blob: Blob, { name, at }: ZipEntry): Promise<void> {
  const local = await bytesOf(blob, at, at + LOCAL.bytes);
  if (local.byteLength < LOCAL.bytes || local.getUint32(0, true) !== LOCAL.sign) throw new Unreadable(DAMAGED_WORKBOOK);
  const name_at = at + LOCAL.bytes, here = await bytesOf(blob, name_at, name_at + local.getUint16(26, true));
  if (nameOf(here, 0, here.byteLength) !== name) throw new Unreadable(DAMAGED_WORKBOOK);
}

/**
 * The files in a zip archive, by name.
 *
 * @throws {Unreadable} when the directory is damaged, or the archive says that it holds too many or too large files
 */
export async function zipEntries(blob: Blob): Promise<ReadonlyMap<string, ZipEntry>> {
  const directory = await directoryOf(blob);
  if (directory.bytes > DIRECTORY_BYTES) throw new Unreadable(`This archive holds more than ${LIMITS.zip_entries.toLocaleString("en")} files; no workbook does.`);
  const view = await bytesOf(blob, directory.at, directory.at + directory.bytes), entries = new Map<string, ZipEntry>();
  let total = 0;
  for (let at = 0; at < view.byteLength;) {
    const { entry, next } = entryAt(view, at);
    if (entries.has(entry.name)) throw new Unreadable(TWICE);
    entries.set(entry.name, entry);
    total += entry.bytes;
    at = next;
    if (entries.size > LIMITS.zip_entries) throw new Unreadable(`This archive holds more than ${LIMITS.zip_entries.toLocaleString("en")} files; no workbook does.`);
    if (total > LIMITS.unpacked_bytes) throw new Unreadable("Unpacked, this file is larger than 2 GB; split it.");
    if (isTooDense(entry.packed_bytes, entry.bytes)) throw new Unreadable(DAMAGED_WORKBOOK);
  }
  if (directory.files !== null && directory.files !== entries.size) throw new Unreadable(DAMAGED_WORKBOOK);
  for (const entry of entries.values()) await checkName(blob, entry);
  return entries;
}

/** The bytes as they come; at their end they must be what the directory says was written. */
async function* checked(chunks: AsyncGenerator<Uint8Array>, { crc, bytes }: ZipEntry): AsyncGenerator<Uint8Array> {
  let value = 0, length = 0;
  for await (const chunk of chunks) {
    value = crc32(chunk, value);
    length += chunk.byteLength;
    yield chunk;
  }
  if (value !== crc || length !== bytes) throw new Unreadable(DAMAGED_WORKBOOK);
}

/**
 * The bytes of one file in the archive piece by piece, held against their check value at the end.
 *
 * @param onBytes told the place in the archive up to which it was read
 * @throws {Unreadable} when it is locked, damaged, packed in a rare way, or larger than the directory says
 */
export async function* entryBytes(blob: Blob, entry: ZipEntry, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<Uint8Array> {
  if (entry.is_locked) throw new Unreadable("This file is locked with a password; save it without one and bring that.");
  const local = await bytesOf(blob, entry.at, entry.at + LOCAL.bytes);
  if (local.byteLength < LOCAL.bytes || local.getUint32(0, true) !== LOCAL.sign) throw new Unreadable(DAMAGED_WORKBOOK);
  const start = entry.at + LOCAL.bytes + local.getUint16(26, true) + local.getUint16(28, true);
  const packed = blob.slice(start, start + entry.packed_bytes), report = (done: number) => onBytes(start + done);
  if (entry.method === 0) return yield* checked(plainBytes(packed, signal, report), entry);
  if (entry.method !== 8) throw new Unreadable("This file is packed in a way that is not known; open it, save it again and bring that.");
  // A file that unpacks to more than it says is made to fill the memory.
  yield* checked(inflatedBytes(packed, { format: "deflate-raw", most: entry.bytes, too_large: DAMAGED_WORKBOOK, damaged: DAMAGED_WORKBOOK }, signal, report), entry);
}

/** The text of one file in the archive piece by piece; XML is in UTF-8 unless it begins with the mark of UTF-16. */
export async function* entryText(blob: Blob, entry: ZipEntry, signal: AbortSignal, onBytes: OnBytes = () => undefined): AsyncGenerator<string> {
  let decoder: TextDecoder | null = null;
  for await (const chunk of entryBytes(blob, entry, signal, onBytes)) {
    decoder ??= new TextDecoder(chunk[0] === 0xff && chunk[1] === 0xfe ? "utf-16le" : chunk[0] === 0xfe && chunk[1] === 0xff ? "utf-16be" : "utf-8");
    yield decoder.decode(chunk, { stream: true });
  }
  if (decoder) yield decoder.decode();
}
