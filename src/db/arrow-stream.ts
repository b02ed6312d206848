import { RecordBatchReader } from "apache-arrow";
import { DamagedRows } from "./errors.ts";

/** A stream closes with a continuation mark and an empty message. */
const END = [0xff, 0xff, 0xff, 0xff, 0, 0, 0, 0];

const closes = (stream: Uint8Array) => END.every((byte, at) => stream.at(at - END.length) === byte);

/**
 * The pieces of a result, which the engine gives without an end, as one Arrow IPC stream, closed.
 *
 * Whether the last piece closes it cannot be told from its bytes: a column of 25 to 32 yeses ends as a stream does.
 */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = [...pieces, Uint8Array.from(END)];
  const stream = new Uint8Array(whole.reduce((bytes, piece) => bytes + piece.length, 0));
  let at = 0;
  for (const piece of whole) {
    stream.set(piece, at);
    at += piece.length;
  }
  return stream;
}

/**
 * How many rows an Arrow IPC stream holds and under which names, read from its frame alone.
 *
 * The engine must never see a stream that is cut short: it reports nothing, makes no table, and its connection takes no
 * other stream from then on.
 *
 * @throws {DamagedRows} if the stream is cut short, not closed or no Arrow stream
 */
export function frame(stream: Uint8Array): { rows: number; columns: string[] } {
  if (!closes(stream)) throw new DamagedRows("The stored rows are cut short.");
  try {
    const reader = RecordBatchReader.from(stream).open();
    // Read to its end, the reader forgets its schema.
    const columns = reader.schema.fields.map(({ name }) => name);
    let rows = 0;
    for (const batch of reader) rows += batch.numRows;
    return { rows, columns };
  } catch (cause) {
    throw new DamagedRows("The stored rows cannot be read.", { cause });
  }
}
