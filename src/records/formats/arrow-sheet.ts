import { CompressionType, DataType, RecordBatchReader, TimeUnit, compressionRegistry } from "apache-arrow";
import type { Field, RecordBatch, RecordBatchFileReader } from "apache-arrow";
import { decompress } from "fzstd";
import { boundMessages, isWholeBatch } from "./arrow-check.ts";
import { plainBytes } from "./blob-bytes.ts";
import type { OnBytes } from "./blob-bytes.ts";
import { decimalText, durationOf, momentOf, valueText } from "./column-values.ts";
import type { Typed } from "./number-format.ts";
import { PIECE_ROWS, plainRow, sheetOf } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { Unreadable } from "./unreadable.ts";

const MAGIC = "ARROW1";
const DAMAGED = "This Arrow file is damaged or was cut off, so it cannot be read.";
const PER_SECOND: Readonly<Record<TimeUnit, number>> = {
  [TimeUnit.SECOND]: 1, [TimeUnit.MILLISECOND]: 1000, [TimeUnit.MICROSECOND]: 1_000_000, [TimeUnit.NANOSECOND]: 1_000_000_000,
};

/** A decimal number comes as pieces of 32 bits, lowest first, the highest bit of all its sign. */
function decimalDigits(pieces: Uint32Array): bigint {
  const digits = [...pieces].reduceRight((all, piece) => (all << 32n) | BigInt(piece), 0n);
  return BigInt.asIntN(pieces.length * 32, digits);
}

const decimalOf = (value: unknown, scale: number): Typed =>
  (value instanceof Uint32Array ? { text: decimalText(decimalDigits(value), scale), typed: true } : valueText(null));

type ReadText = (value: unknown) => Typed;

function textOf(type: DataType): ReadText {
  if (DataType.isDictionary(type)) return textOf(type.dictionary as DataType);
  if (DataType.isDate(type) || DataType.isTimestamp(type)) return momentOf;
  if (DataType.isTime(type)) return (value) => durationOf(value, PER_SECOND[type.unit]);
  if (DataType.isDuration(type)) return (value) => durationOf(value, PER_SECOND[type.unit]);
  if (DataType.isDecimal(type)) return (value) => decimalOf(value, type.scale);
  if (DataType.isList(type) || DataType.isFixedSizeList(type)) return listText(type.children[0]?.type);
  return valueText;
}

/** Items of a list, joined; of records in a list JSON. */
function listText(type: DataType | undefined): ReadText {
  if (type === undefined || DataType.isStruct(type) || DataType.isList(type)) return valueText;
  const item = textOf(type);
  return (value) => {
    if (typeof value !== "object" || value === null) return valueText(null);
    const texts = Array.from(value as Iterable<unknown>, (one) => item(one).text);
    return { text: texts.filter((text) => text !== "").join("; "), typed: false };
  };
}

/** Reads one column, or one part of a record within a row. */
interface Column {
  readonly heading: string;
  readonly text: (value: unknown) => Typed;
}

function columnsOf({ name, type }: Field, prefix = ""): Column[] {
  const heading = prefix + name;
  if (!DataType.isStruct(type)) return [{ heading, text: textOf(type) }];
  return type.children.flatMap((child: Field) => columnsOf(child, `${heading}.`).map(({ heading: own, text }) => ({
    heading: own,
    text: (value: unknown) => text(typeof value === "object" && value !== null ? (value as Record<string, unknown>)[child.name] : null),
  })));
}

function rowsOfBatch(batch: RecordBatch, columns: readonly (readonly Column[])[], from: number, to: number, line: number): SheetRow[] {
  const vectors = columns.map((_column, at) => batch.getChildAt(at)), rows: SheetRow[] = [];
  for (let at = from; at < to; at += 1) {
    const all = columns.flatMap((parts, place) => {
      const value: unknown = vectors[place]?.get(at);
      return parts.map(({ text }) => text(value));
    });
    rows.push(plainRow(line + at, all.map(({ text }) => text), new Set(all.flatMap(({ typed }, place) => (typed ? [place] : [])))));
  }
  return rows;
}

/** One batch after the other by its number: the library's own loop never ends where a batch is none. */
function* fileBatches(bytes: Uint8Array): Generator<RecordBatch> {
  const reader = RecordBatchReader.from(bytes).open() as RecordBatchFileReader;
  for (let at = 0; at < reader.numRecordBatches; at += 1) {
    const batch = reader.readRecordBatch(at);
    if (batch === null) throw new Unreadable(DAMAGED);
    yield batch;
  }
}

/** The file kind is read as a whole, because its batches may be named in any order; a stream comes piece by piece. */
async function readerOf(blob: Blob, signal: AbortSignal, onBytes: OnBytes): Promise<AsyncIterable<RecordBatch> | Iterable<RecordBatch>> {
  const is_file = (await blob.slice(0, MAGIC.length).text()) === MAGIC;
  if (is_file) return fileBatches(new Uint8Array(await blob.arrayBuffer()));
  return (await RecordBatchReader.from(plainBytes(blob, signal, onBytes))).open();
}

function unreadable(cause: unknown): unknown {
  if (cause instanceof Unreadable) return cause;
  if (/compressed/.test(String(cause))) {
    return new Unreadable("This Arrow file is packed with LZ4, which is not known here; save it without compression or as Parquet.", { cause });
  }
  return new Unreadable(DAMAGED, { cause });
}

async function* batchesOf(blob: Blob, signal: AbortSignal, onBytes: OnBytes): AsyncGenerator<RecordBatch> {
  boundMessages();
  compressionRegistry.set(CompressionType.ZSTD, { decode: (packed) => decompress(packed) });
  try {
    for await (const batch of await readerOf(blob, signal, onBytes)) {
      if (!isWholeBatch(batch)) throw new Unreadable(DAMAGED);
      yield batch;
    }
  } catch (cause) {
    signal.throwIfAborted();
    throw unreadable(cause);
  }
}

/**
 * The one sheet of an Arrow file or stream.
 *
 * @throws {Unreadable} when it is damaged or packed in a way that is not known
 */
export async function arrowSheet(blob: Blob, options: OpenOptions): Promise<Sheet> {
  return sheetOf({ name: null, has_headings: true }, options, async function* (onBytes) {
    let columns: Column[][] | null = null, line = 1;
    for await (const batch of batchesOf(blob, options.signal, onBytes)) {
      if (columns === null) {
        columns = batch.schema.fields.map((field) => columnsOf(field));
        yield [plainRow(0, columns.flat().map(({ heading }) => heading), null)];
      }
      for (let at = 0; at < batch.numRows; at += PIECE_ROWS) {
        options.signal.throwIfAborted();
        yield rowsOfBatch(batch, columns, at, Math.min(batch.numRows, at + PIECE_ROWS), line);
      }
      line += batch.numRows;
    }
    onBytes(blob.size);
  });
}
