import { gunzipSync } from "fflate";
import { decompress } from "fzstd";
import { parquetMetadataAsync, parquetRead, parquetSchema, snappyUncompress } from "hyparquet";
import type { AsyncBuffer, Compressors, FileMetaData, SchemaTree } from "hyparquet";
import { durationOf, valueText } from "./column-values.ts";
import type { Typed } from "./number-format.ts";
import { checkFoot, checkPages, checkRows } from "./parquet-check.ts";
import { PIECE_ROWS, plainRow, sheetOf } from "./sheet-source.ts";
import type { OpenOptions, Sheet, SheetRow } from "./sheet.ts";
import { LIMITS, Unreadable } from "./unreadable.ts";

/** Rows decoded at once; the groups in a file may hold a million. */
const DECODED_ROWS = 50_000;

const tooLarge = () => new Unreadable("A column of this Parquet file is larger than 256 MB when unpacked; save it in smaller row groups.");

/** A page says how large it is unpacked, which a damaged or hostile file may overstate. */
const bounded = (unpack: (packed: Uint8Array, bytes: number) => Uint8Array) => (packed: Uint8Array, bytes: number) => {
  if (bytes > LIMITS.whole_bytes) throw tooLarge();
  return unpack(packed, bytes);
};

const COMPRESSORS: Compressors = {
  GZIP: bounded((packed, bytes) => gunzipSync(packed, { out: new Uint8Array(bytes) })),
  ZSTD: bounded((packed, bytes) => decompress(packed, new Uint8Array(bytes))),
  SNAPPY: bounded((packed, bytes) => {
    const page = new Uint8Array(bytes);
    snappyUncompress(packed, page);
    return page;
  }),
};

/** Reads one column out of a row as the library gives it. */
interface Column {
  readonly heading: string;
  readonly text: (row: readonly unknown[]) => Typed;
}

const PER_SECOND = { MILLIS: 1000, MICROS: 1_000_000, NANOS: 1_000_000_000 } as const;

function textOf({ element: { converted_type, logical_type } }: SchemaTree): (value: unknown) => Typed {
  if (logical_type?.type === "TIME") return (value) => durationOf(value, PER_SECOND[logical_type.unit]);
  if (converted_type === "TIME_MILLIS") return (value) => durationOf(value, PER_SECOND.MILLIS);
  if (converted_type === "TIME_MICROS") return (value) => durationOf(value, PER_SECOND.MICROS);
  return valueText;
}

const isStruct = ({ children, element }: SchemaTree) =>
  children.length > 0 && element.repetition_type !== "REPEATED" && element.converted_type === undefined && element.logical_type === undefined;

const inside = (value: unknown, name: string): unknown => (typeof value === "object" && value !== null ? (value as Record<string, unknown>)[name] : null);

/** The columns under one of the file's, more than one for a record within the row. */
function columnsUnder(tree: SchemaTree, heading: string, read: (row: readonly unknown[]) => unknown): Column[] {
  if (!isStruct(tree)) {
    const text = textOf(tree);
    return [{ heading, text: (row) => text(read(row)) }];
  }
  return tree.children.flatMap((child) => columnsUnder(child, `${heading}.${child.element.name}`, (row) => inside(read(row), child.element.name)));
}

function rowOf(columns: readonly Column[], row: readonly unknown[], line: number): SheetRow {
  const all = columns.map(({ text }) => text(row));
  return plainRow(line, all.map(({ text }) => text), new Set(all.flatMap(({ typed }, at) => (typed ? [at] : []))));
}

/** Rows from `from` to before `to`, as arrays in the order of the schema. */
function decoded(file: AsyncBuffer, metadata: FileMetaData, from: number, to: number): Promise<unknown[][]> {
  return new Promise((resolve, reject) => {
    parquetRead({ file, metadata, rowStart: from, rowEnd: to, compressors: COMPRESSORS, onComplete: resolve }).catch(reject);
  });
}

/** What is wrong with a file, in the owner's words. */
function unreadable(cause: unknown): Unreadable {
  if (cause instanceof Unreadable) return cause;
  const codec = /unsupported compression codec: (\w+)/.exec(String(cause))?.[1];
  if (codec !== undefined) return new Unreadable(`This Parquet file is packed with ${codec}, which is not known here; save it with SNAPPY, ZSTD or GZIP.`, { cause });
  return new Unreadable("This Parquet file is damaged or of a rare kind, so it cannot be read.", { cause });
}

const refuse = (cause: unknown): never => {
  throw unreadable(cause);
};

type ReportShare = (share: number) => void;

async function* rowsOf(file: AsyncBuffer, metadata: FileMetaData, columns: readonly Column[], signal: AbortSignal, report: ReportShare) {
  yield [plainRow(0, columns.map(({ heading }) => heading), null)];
  const total = Number(metadata.num_rows);
  let from = 0;
  for (const group of metadata.row_groups) {
    await checkPages(file, group);
    for (const end = from + Number(group.num_rows); from < end; from = Math.min(end, from + DECODED_ROWS)) {
      signal.throwIfAborted();
      const start = from, rows = await decoded(file, metadata, start, Math.min(end, start + DECODED_ROWS));
      for (let at = 0; at < rows.length; at += PIECE_ROWS) {
        signal.throwIfAborted();
        yield rows.slice(at, at + PIECE_ROWS).map((row, place) => rowOf(columns, row, start + at + place + 1));
        report(Math.min(1, (start + at + PIECE_ROWS) / total));
      }
    }
  }
}

/** @throws {Unreadable} when a group says that a column of it is larger than the limit */
function checkGroups({ row_groups }: FileMetaData): void {
  for (const { columns } of row_groups) {
    for (const { meta_data } of columns) if (Number(meta_data?.total_uncompressed_size ?? 0) > LIMITS.whole_bytes) throw tooLarge();
  }
}

interface Described {
  readonly metadata: FileMetaData;
  readonly columns: readonly Column[];
}

/** What the file says of itself, held against itself. */
async function described(file: AsyncBuffer): Promise<Described> {
  await checkFoot(file);
  const metadata = await parquetMetadataAsync(file, { geoparquet: false });
  checkRows(metadata);
  checkGroups(metadata);
  return { metadata, columns: parquetSchema(metadata).children.flatMap((tree, at) => columnsUnder(tree, tree.element.name, (row) => row[at])) };
}

/**
 * The one sheet of a Parquet file.
 *
 * @throws {Unreadable} when it is damaged, locked, or packed in a way that is not known
 */
export async function parquetSheet(blob: Blob, options: OpenOptions): Promise<Sheet> {
  const file: AsyncBuffer = { byteLength: blob.size, slice: (from, to) => blob.slice(from, to).arrayBuffer() };
  const { metadata, columns } = await described(file).catch(refuse);
  const in_utc = metadata.schema.some(({ logical_type: type }) => type?.type === "TIMESTAMP" && type.isAdjustedToUTC);
  return sheetOf({ name: null, has_headings: true }, options, async function* (onBytes, remarks) {
    try {
      yield* rowsOf(file, metadata, columns, options.signal, (share) => onBytes(Math.round(share * blob.size)));
    } catch (cause) {
      options.signal.throwIfAborted();
      refuse(cause);
    }
    if (in_utc) remarks.push("Times of day are as the file has them, in UTC.");
  });
}
