import { Unreadable } from "./unreadable.ts";

/** Called with the number of bytes of the file (as it lies on the disk) read so far. */
export type OnBytes = (done: number) => void;

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

/** The bytes of a blob piece by piece. */
export function plainBytes(blob: Blob, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<Uint8Array> {
  return chunks(pieces(blob, onBytes), signal);
}

export interface Packing {
  readonly format: "gzip" | "deflate-raw";
  /** Bytes it may unpack to, and what is said of more. */
  readonly most: number;
  readonly too_large: string;
  readonly damaged: string;
}

/**
 * The bytes of a packed blob piece by piece.
 *
 * @throws {Unreadable} when the packing is damaged or holds more than `most`
 */
export async function* inflatedBytes(blob: Blob, packing: Packing, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<Uint8Array> {
  const unzip = new DecompressionStream(packing.format) as unknown as TransformStream<Uint8Array, Uint8Array>;
  let length = 0;
  try {
    for await (const chunk of chunks(pieces(blob, onBytes).pipeThrough(unzip), signal)) {
      if ((length += chunk.byteLength) > packing.most) throw new Unreadable(packing.too_large);
      yield chunk;
    }
  } catch (cause) {
    if (cause instanceof Unreadable || signal.aborted) throw cause;
    throw new Unreadable(packing.damaged, { cause });
  }
}
