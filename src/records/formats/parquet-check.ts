import type { AsyncBuffer, ColumnMetaData, FileMetaData, RowGroup } from "hyparquet";
import { deserializeTCompactProtocol } from "hyparquet/src/thrift.js";
import { crc32 } from "./crc32.ts";
import { isWithinBounds } from "./thrift-bounds.ts";
import { Unreadable } from "./unreadable.ts";

const damaged = () => new Unreadable("This Parquet file is damaged or of a rare kind, so it cannot be read.");

/** A structure as the library reads it; one that is damaged may hold anything. */
type Fields = Readonly<Record<`field_${number}`, unknown>>;

/** Whole numbers at the beginning of the newer kind of page. */
const NEWER = 6;

/** Kinds of page: the field in which each kind says more, how many whole numbers stand there first, and whether its values are the column's (parquet.thrift, PageHeader). */
const KINDS: Readonly<Record<number, { readonly field: `field_${number}`; readonly counts: number; readonly own: boolean }>> = {
  0: { field: "field_5", counts: 4, own: true }, 2: { field: "field_7", counts: 2, own: false }, 3: { field: "field_8", counts: NEWER, own: true },
};

const isCount = (value: unknown): value is number => typeof value === "number" && Number.isInteger(value) && value >= 0;

interface PageSaid { readonly packed: number; readonly unpacked: number; readonly crc: number | null; readonly values: number }

/** What a page's heading says; null when no writer writes such a one. */
function pageSaid(heading: Fields): PageSaid | null {
  const { field_1: type, field_2: unpacked, field_3: packed, field_4: crc = null } = heading, kind = isCount(type) ? KINDS[type] : undefined;
  if (!kind || !isCount(unpacked) || !isCount(packed) || (crc !== null && !Number.isInteger(crc))) return null;
  const more = heading[kind.field] as Fields | undefined, counts = Array.from({ length: kind.counts }, (_, at) => more?.[`field_${at + 1}`]);
  if (typeof more !== "object" || !counts.every(isCount)) return null;
  const [values = 0, nulls = 0, rows = 0, , definitions = 0, repetitions = 0] = counts;
  // Of the newer kind of page: nothing missing without saying where, and no more rows than values.
  if (counts.length === NEWER && (nulls > values || rows > values || definitions + repetitions > packed || (nulls > 0 && definitions === 0))) return null;
  return { packed, unpacked, crc: crc as number | null, values: kind.own ? values : 0 };
}

/** Goes from page to page of one column: each must lie within it, be what its check value says, and all together hold what the column says. */
function checkColumn(bytes: ArrayBuffer, { num_values, codec }: ColumnMetaData): void {
  const reader = { view: new DataView(bytes), offset: 0 }, all = Number(num_values);
  let values = 0;
  while (reader.offset < bytes.byteLength && values < all) {
    if (!isWithinBounds(reader.view, reader.offset)) throw damaged();
    const page = pageSaid(deserializeTCompactProtocol(reader));
    if (!page || reader.offset + page.packed > bytes.byteLength || (codec === "UNCOMPRESSED" && page.packed !== page.unpacked)) throw damaged();
    if (page.crc !== null && crc32(new Uint8Array(bytes, reader.offset, page.packed)) !== page.crc >>> 0) throw damaged();
    values += page.values;
    reader.offset += page.packed;
  }
  if (values !== all) throw damaged();
}

/** The bytes of a column: from its dictionary, where it has one, to the end of its pages. */
function placeOf({ dictionary_page_offset, data_page_offset, total_compressed_size }: ColumnMetaData): { readonly from: number; readonly to: number } {
  const given: readonly unknown[] = [dictionary_page_offset ?? 0n, data_page_offset, total_compressed_size];
  if (!given.every((one) => typeof one === "bigint")) throw damaged();
  const from = Number(dictionary_page_offset || data_page_offset);
  return { from, to: from + Number(total_compressed_size) };
}

/** The last bytes: how long what the file says of itself is, and the mark of the kind. */
const TAIL_BYTES = 8;

/**
 * Looks whether what a file says of itself lies within it, before it is read.
 *
 * @throws {Unreadable} where it does not
 */
export async function checkFoot(file: AsyncBuffer): Promise<void> {
  const tail = new DataView(await file.slice(Math.max(0, file.byteLength - TAIL_BYTES), file.byteLength));
  const bytes = tail.byteLength < TAIL_BYTES ? 0 : tail.getUint32(0, true), from = file.byteLength - TAIL_BYTES - bytes;
  if (from < 0 || !isWithinBounds(new DataView(await file.slice(from, file.byteLength - TAIL_BYTES)))) throw damaged();
}

/**
 * Holds the numbers of rows that a file gives against each other, before a single row is made.
 *
 * @throws {Unreadable} where they do not agree, or a column has no name
 */
export function checkRows({ schema, num_rows, row_groups }: FileMetaData): void {
  if (schema.some(({ name }) => typeof (name as unknown) !== "string")) throw damaged();
  const rows = row_groups.map((group) => Number(group.num_rows));
  if (!rows.every((count) => count >= 0) || rows.reduce((sum, count) => sum + count, 0) !== Number(num_rows)) throw damaged();
}

/**
 * Goes through the pages of one group of rows, so that a damaged file neither is read without end nor fills the memory.
 *
 * @throws {Unreadable} when a page is not what its check value says, or a column holds other than it says
 */
export async function checkPages(file: AsyncBuffer, { columns, num_rows }: RowGroup): Promise<void> {
  for (const { meta_data } of columns) {
    if (!meta_data) throw damaged();
    const { from, to } = placeOf(meta_data);
    // What is missing is not a number, and no comparison with it holds.
    if (!(from >= 0 && to >= from && to <= file.byteLength && Number(meta_data.num_values) >= Number(num_rows))) throw damaged();
    checkColumn(await file.slice(from, to), meta_data);
  }
}
