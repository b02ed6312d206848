import { DataType } from "apache-arrow";
import type { Data, RecordBatch } from "apache-arrow";
import { ByteBuffer } from "flatbuffers";
import { LIMITS } from "./unreadable.ts";

const lengthSaid = ByteBuffer.prototype.__vector_len;

/** A list in a message takes a byte an item at the least. */
function lengthHeld(this: ByteBuffer, at: number): number {
  const length = lengthSaid.call(this, at);
  if (length < 0 || length > this.capacity()) throw new RangeError(`a list in an Arrow message needs to fit its ${this.capacity()} bytes, it says ${length}`);
  return length;
}

/** Has the library refuse a message whose lists are longer than itself; it would read on until the memory is full. */
export function boundMessages(): void {
  ByteBuffer.prototype.__vector_len = lengthHeld;
}

/** Where each text or list of a column ends must follow where the one before does, and lie within what there is. */
function endsFit(ends: ArrayLike<number | bigint>, rows: number, most: number): boolean {
  if (rows === 0) return true;
  if (ends.length < rows + 1) return false;
  for (let at = 0, before = 0; at <= rows; at += 1) {
    const end = Number(ends[at]);
    if (end < before || end > most) return false;
    before = end;
  }
  return true;
}

/** The library's types hide what a column lies in; some kinds lack some of it. */
interface Buffers {
  readonly values?: ArrayLike<unknown>;
  readonly valueOffsets?: ArrayLike<number | bigint>;
}

/** Whether what a column says it holds is there. */
function isWhole(data: Data): boolean {
  const { type, length, children, stride } = data, { values, valueOffsets } = data as unknown as Buffers;
  if (DataType.isNull(type)) return true;
  if (DataType.isStruct(type)) return children.every((child: Data) => child.length >= length && isWhole(child));
  if (DataType.isList(type) || DataType.isMap(type)) return endsFit(valueOffsets ?? [], length, children[0]?.length ?? 0) && children.every(isWhole);
  if (DataType.isFixedSizeList(type)) return (children[0]?.length ?? 0) >= length * type.listSize && children.every(isWhole);
  if (valueOffsets && valueOffsets.length > 0 && !DataType.isUnion(type)) return endsFit(valueOffsets, length, values?.length ?? 0);
  if (values === undefined) return children.every(isWhole);
  return DataType.isBool(type) ? values.length * 8 >= length : values.length >= length * stride;
}

/**
 * Whether a batch holds as many rows as it says, so that a damaged file neither fills the memory nor is read without end.
 *
 * A column of a kind that is always missing takes no bytes; beside no other column it says nothing of rows.
 */
export function isWholeBatch({ data, numRows }: RecordBatch): boolean {
  const filled = data.children.filter(({ type }: Data) => !DataType.isNull(type));
  return (filled.length > 0 || numRows <= LIMITS.workbook_rows) && data.children.every((child: Data) => child.length === numRows && isWhole(child));
}
