import type { Batch, NewBatch, StoredTable } from "./ledger.ts";
import { LedgerDamaged } from "./errors.ts";

export interface Packed extends StoredTable {
  readonly content: Uint8Array<ArrayBuffer>;
}

/** Bytes that go through a stream at once: a whole table sent as one blob is copied before the first byte comes out. */
const PIECE = 1 << 20;

function inPieces(bytes: Uint8Array): ReadableStream<BufferSource> {
  let at = 0;
  return new ReadableStream<BufferSource>({
    pull(to) {
      if (at >= bytes.length) return to.close();
      // A copy: what is read from a stream may be handed to another thread.
      to.enqueue(bytes.slice(at, (at += PIECE)) as Uint8Array<ArrayBuffer>);
    },
  });
}

const through = async (bytes: Uint8Array, change: GenericTransformStream): Promise<Uint8Array<ArrayBuffer>> =>
  new Uint8Array(await new Response(inPieces(bytes).pipeThrough(change)).arrayBuffer());

async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * The tables of an import as they are stored: compressed, counted and with a checksum.
 *
 * @throws {RangeError} if a table comes twice
 */
export async function packed(payloads: NewBatch["payloads"]): Promise<Packed[]> {
  const twice = payloads.find(({ table }, at) => payloads.findIndex((other) => other.table === table) !== at);
  if (twice) throw new RangeError(`append: needs each table at most once, got ${twice.table} twice`);
  const done: Packed[] = [];
  for (const { table, rows, stream } of payloads) {
    const content = await through(stream, new CompressionStream("gzip"));
    done.push({ table, rows, bytes: content.length, sha256: await sha256(content), content });
  }
  return done;
}

/**
 * What was packed, as it was.
 *
 * @param content null when nothing is stored under the table's name
 * @throws {LedgerDamaged} if a single bit differs
 */
export async function unpacked(batch: Batch, stored: StoredTable, content: Uint8Array<ArrayBuffer> | null): Promise<Uint8Array> {
  if (content === null) throw new LedgerDamaged(batch.import_no, `its ${stored.table} are missing`);
  if (content.length !== stored.bytes || (await sha256(content)) !== stored.sha256) {
    throw new LedgerDamaged(batch.import_no, `its ${stored.table} have changed on the disk`);
  }
  return through(content, new DecompressionStream("gzip"));
}

/**
 * The table of a batch.
 *
 * @throws {RangeError} if the batch has no such table
 */
export function storedTable(batch: Batch, table: string): StoredTable {
  const stored = batch.tables.find((one) => one.table === table);
  if (!stored) throw new RangeError(`payload: import ${batch.import_no} needs to hold ${table}, it holds ${batch.tables.map((one) => one.table).join(", ")}`);
  return stored;
}
