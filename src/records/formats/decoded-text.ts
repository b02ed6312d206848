import { isGzip } from "../reading/file-kind.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** Called with the number of bytes of the file (as it lies on the disk) read so far. */
type OnBytes = (done: number) => void;

/** `for await` over a stream is missing in browsers of 2024. */
async function* chunks(stream: ReadableStream<Uint8Array>, signal: AbortSignal): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  try {
    for (;;) {
      signal.throwIfAborted();
      const { value, done } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // The file may already have failed, and that failure is on its way to the caller.
    await reader.cancel().catch(() => undefined);
  }
}

/** A browser gives the stream of a blob in pieces as it likes, up to all at once; these bound memory and let a cancel in. */
const PIECE_BYTES = 512 * 1024;

function pieces(blob: Blob, onBytes: OnBytes): ReadableStream<Uint8Array> {
  let at = 0;
  return new ReadableStream({
    async pull(controller) {
      if (at >= blob.size) return controller.close();
      const piece = new Uint8Array(await blob.slice(at, at + PIECE_BYTES).arrayBuffer());
      onBytes((at += piece.length));
      controller.enqueue(piece);
    },
  });
}

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
  const packed = isGzip(new Uint8Array(await blob.slice(0, 2).arrayBuffer()));
  const raw = pieces(blob, onBytes);
  if (!packed) return yield* chunks(raw, signal);
  const unzip = new DecompressionStream("gzip") as unknown as TransformStream<Uint8Array, Uint8Array>;
  let length = 0;
  try {
    for await (const chunk of chunks(raw.pipeThrough(unzip), signal)) {
      if ((length += chunk.byteLength) > LIMITS.unpacked_bytes) throw new Unreadable("Unpacked, this file is larger than 2 GB; split it.");
      yield chunk;
    }
  } catch (cause) {
    if (cause instanceof Unreadable || signal.aborted) throw cause;
    throw new Unreadable("The packed file is damaged or was cut off; pack or download it again.", { cause });
  }
}

/**
 * How the text is encoded: by its byte order mark, else UTF-8 if the whole file is valid UTF-8, else Windows-1252.
 *
 * The whole file is read, because a single £ sign may stand in its last row.
 */
export async function encodingOf(blob: Blob, signal: AbortSignal): Promise<Encoding> {
  const head = await headBytes(blob, signal, 2);
  if (head[0] === 0xff && head[1] === 0xfe) return "utf-16le";
  if (head[0] === 0xfe && head[1] === 0xff) return "utf-16be";
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
