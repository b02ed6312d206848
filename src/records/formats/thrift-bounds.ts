/** Kinds of value in the compact writing of Thrift (thrift-compact-protocol, "Struct encoding"), and how deep they may lie in each other. */
const TRUE = 1, FALSE = 2, BYTE = 3, SHORT = 4, WHOLE = 5, LONG = 6, DOUBLE = 7, BINARY = 8, LIST = 9, STRUCT = 12;
const DEEPEST = 30, LONG_LIST = 15;

class OutOfBounds extends Error {}

/** Steps over values without keeping any. */
class Steps {
  at: number;
  private readonly view: DataView;

  constructor(view: DataView, at: number) {
    this.view = view;
    this.at = at;
  }

  structure(depth: number): void {
    if (depth > DEEPEST) throw new OutOfBounds();
    for (let field = this.byte(); (field & 0x0f) !== 0; field = this.byte()) {
      if (field >> 4 === 0) this.varint();
      this.value(field & 0x0f, depth);
    }
  }

  private byte(): number {
    if (this.at >= this.view.byteLength) throw new OutOfBounds();
    return this.view.getUint8(this.at++);
  }

  private varint(): number {
    for (let shift = 0, value = 0; shift < 64; shift += 7) {
      const byte = this.byte();
      value += (byte & 0x7f) * 2 ** shift;
      if (byte < 0x80) return value;
    }
    throw new OutOfBounds();
  }

  private over(bytes: number): void {
    if ((this.at += bytes) > this.view.byteLength) throw new OutOfBounds();
  }

  private value(kind: number, depth: number): void {
    if (kind === TRUE || kind === FALSE) return;
    if (kind === SHORT || kind === WHOLE || kind === LONG) this.varint();
    else if (kind === BYTE) this.over(1);
    else if (kind === DOUBLE) this.over(8);
    else if (kind === BINARY) this.over(this.varint());
    else if (kind === LIST) this.list(depth);
    else if (kind === STRUCT) this.structure(depth + 1);
    else throw new OutOfBounds();
  }

  /** Each item takes a byte at the least. */
  private list(depth: number): void {
    const head = this.byte(), short = head >> 4, kind = head & 0x0f, length = short === LONG_LIST ? this.varint() : short;
    if (length > this.view.byteLength - this.at) throw new OutOfBounds();
    for (let item = 0; item < length; item += 1) this.value(kind === TRUE || kind === FALSE ? BYTE : kind, depth);
  }
}

/**
 * Whether a structure lies within its bytes with all its texts and lists; one that is damaged may say that it holds a
 * thousand million of them, which a reader would make room for.
 */
export function isWithinBounds(view: DataView, at = 0): boolean {
  try {
    new Steps(view, at).structure(0);
    return true;
  } catch (error) {
    if (error instanceof OutOfBounds) return false;
    throw error;
  }
}
