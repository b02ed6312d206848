import { inflatedBytes, plainBytes } from "./blob-bytes.ts";
import type { OnBytes } from "./blob-bytes.ts";
import type { Encoding } from "./sheet.ts";
import { LIMITS } from "./unreadable.ts";

const GZIP = {
  format: "gzip",
  most: LIMITS.unpacked_bytes,
  too_large: "Unpacked, this file is larger than 2 GB; split it.",
  damaged: "The packed file is damaged or was cut off; pack or download it again.",
} as const;

/** First bytes of a file, unpacked when it is gzip. */
export async function headBytes(blob: Blob, signal: AbortSignal, size = 65_536): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of unpackedBytes(blob, signal, () => undefined)) {
    parts.push(chunk);
    if ((length += chunk.byteLength) >= size) break;
  }
  return new Uint8Array(await new Blob(parts as BlobPart[]).arrayBuffer()).subarray(0, size);
}

/**
 * The bytes of a file piece by piece, unpacked when they begin like gzip, whatever the file is called.
 *
 * @throws {Unreadable} when the packing is damaged or holds more than the limit
 */
export async function* unpackedBytes(blob: Blob, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<Uint8Array> {
  const [first, second] = new Uint8Array(await blob.slice(0, 2).arrayBuffer());
  const is_packed = first === 0x1f && second === 0x8b;
  yield* is_packed ? inflatedBytes(blob, GZIP, signal, onBytes) : plainBytes(blob, signal, onBytes);
}

/** Share of zero bytes on one side of the byte pairs from which text is UTF-16: its letters A to z are half zeros. */
const ZEROS_OF_UTF16 = 0.5;

/** UTF-16 by its byte order mark or, without one, by where the zero bytes stand; null for anything else. */
export function utf16Of(head: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (head[0] === 0xff && head[1] === 0xfe) return "utf-16le";
  if (head[0] === 0xfe && head[1] === 0xff) return "utf-16be";
  const pairs = Math.floor(head.length / 2), zeros = [0, 0];
  for (let at = 0; at < pairs * 2; at += 1) if (head[at] === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  if (pairs >= 4 && even === 0 && odd > pairs * ZEROS_OF_UTF16) return "utf-16le";
  if (pairs >= 4 && odd === 0 && even > pairs * ZEROS_OF_UTF16) return "utf-16be";
  return null;
}

/**
 * How the text is encoded: UTF-16 by its first bytes, else UTF-8 if the whole file is valid UTF-8, else Windows-1252.
 *
 * The whole file is read, because a single £ sign may stand in its last row.
 */
export async function encodingOf(blob: Blob, signal: AbortSignal): Promise<Encoding> {
  const wide = utf16Of(await headBytes(blob, signal, 1024));
  if (wide !== null) return wide;
  const strict = new TextDecoder("utf-8", { fatal: true });
  try {
    for await (const chunk of unpackedBytes(blob, signal, () => undefined)) strict.decode(chunk, { stream: true });
    strict.decode();
    return "utf-8";
  } catch (error) {
    if (error instanceof TypeError) return "windows-1252";
    throw error;
  }
}

/** The text of a file piece by piece, without its byte order mark. */
export async function* textOf(blob: Blob, encoding: Encoding, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<string> {
  const decoder = new TextDecoder(encoding);
  for await (const chunk of unpackedBytes(blob, signal, onBytes)) yield decoder.decode(chunk, { stream: true });
  yield decoder.decode();
}
