import { Bool, DateDay, Dictionary, Float64, Int32, Utf8, makeData, vectorFromArray } from "apache-arrow";
import type { Data } from "apache-arrow";
import type { CellValue } from "./checking/cell.ts";
import type { Kind } from "./columns.ts";
import { KEY_LETTERS } from "./row-key.ts";

/** One column while its rows come in; missing values are null to the end. */
export interface ArrowColumn {
  push(value: CellValue): void;
  data(): Data;
}

const DAY_MS = 86_400_000;

/** One bit a row, the lowest first, as Arrow lays out validity and booleans. */
function bits(flags: Uint8Array, length: number): Uint8Array {
  const packed = new Uint8Array((length + 7) >> 3);
  for (let at = 0; at < length; at += 1) if (flags[at] === 1) packed[at >> 3] = (packed[at >> 3] ?? 0) | (1 << (at & 7));
  return packed;
}

/** Which rows hold something. */
class Presence {
  length = 0;
  private nulls = 0;
  private readonly flags: Uint8Array;

  constructor(rows: number) {
    this.flags = new Uint8Array(rows);
  }

  /** @returns the row's place */
  push(present: boolean): number {
    if (present) this.flags[this.length] = 1;
    else this.nulls += 1;
    return this.length++;
  }

  parts(): { length: number; nullCount: number; nullBitmap: Uint8Array } {
    return { length: this.length, nullCount: this.nulls, nullBitmap: bits(this.flags, this.length) };
  }
}

/** Texts repeat, so each is stored once and the rows point at it. */
class TextColumn implements ArrowColumn {
  private readonly places = new Map<string, number>();
  private readonly indices: Int32Array;
  private readonly presence: Presence;

  constructor(rows: number) {
    this.indices = new Int32Array(rows);
    this.presence = new Presence(rows);
  }

  push(value: CellValue): void {
    const row = this.presence.push(value !== null);
    if (value === null) return;
    const text = typeof value === "string" ? value : String(value);
    let place = this.places.get(text);
    if (place === undefined) this.places.set(text, (place = this.places.size));
    this.indices[row] = place;
  }

  data(): Data {
    const parts = this.presence.parts();
    // A dictionary without entries is read as damaged, so a column without texts has one that nothing points at.
    const words = this.places.size === 0 ? [""] : [...this.places.keys()];
    const type = new Dictionary(new Utf8(), new Int32());
    return makeData({ type, ...parts, data: this.indices.slice(0, parts.length), dictionary: vectorFromArray(words, new Utf8()) });
  }
}

/** Texts of one length in ASCII that hardly ever repeat: their letters side by side, without a dictionary. */
class KeyColumn implements ArrowColumn {
  private readonly letters: Uint8Array;
  private rows = 0;
  private readonly width: number;

  constructor(rows: number, width: number) {
    this.width = width;
    this.letters = new Uint8Array(rows * width);
  }

  push(value: CellValue): void {
    if (typeof value !== "string" || value.length !== this.width) throw new RangeError(`push: needs a key of ${this.width} letters, got ${String(value)}`);
    for (let at = 0; at < this.width; at += 1) this.letters[this.rows * this.width + at] = value.charCodeAt(at);
    this.rows += 1;
  }

  data(): Data {
    const valueOffsets = Int32Array.from({ length: this.rows + 1 }, (_, row) => row * this.width);
    return makeData({ type: new Utf8(), length: this.rows, nullCount: 0, valueOffsets, data: this.letters.slice(0, this.rows * this.width) });
  }
}

/** A column for at most `rows` keys of `row-key.ts`. */
export function keyColumn(rows: number): ArrowColumn {
  return new KeyColumn(rows, KEY_LETTERS);
}

class NumberColumn implements ArrowColumn {
  private readonly numbers: Float64Array | Int32Array;
  private readonly presence: Presence;
  private readonly kind: "number" | "whole" | "date";

  constructor(rows: number, kind: "number" | "whole" | "date") {
    this.kind = kind;
    this.numbers = kind === "number" ? new Float64Array(rows) : new Int32Array(rows);
    this.presence = new Presence(rows);
  }

  push(value: CellValue): void {
    const row = this.presence.push(value !== null);
    if (value !== null) this.numbers[row] = this.kind === "date" ? Date.parse(`${String(value)}T00:00:00Z`) / DAY_MS : Number(value);
  }

  data(): Data {
    const parts = this.presence.parts(), numbers = this.numbers.slice(0, parts.length);
    if (numbers instanceof Float64Array) return makeData({ type: new Float64(), ...parts, data: numbers });
    return this.kind === "date" ? makeData({ type: new DateDay(), ...parts, data: numbers }) : makeData({ type: new Int32(), ...parts, data: numbers });
  }
}

class YesNoColumn implements ArrowColumn {
  private readonly yes: Uint8Array;
  private readonly presence: Presence;

  constructor(rows: number) {
    this.yes = new Uint8Array(rows);
    this.presence = new Presence(rows);
  }

  push(value: CellValue): void {
    this.yes[this.presence.push(value !== null)] = value === true ? 1 : 0;
  }

  data(): Data {
    const parts = this.presence.parts();
    return makeData({ type: new Bool(), ...parts, data: bits(this.yes, parts.length) });
  }
}

/**
 * A column for at most `rows` values of a kind: dates as days, amounts as doubles, whole numbers in 32 bits, words as a
 * dictionary.
 */
export function arrowColumn(kind: Kind, rows: number): ArrowColumn {
  if (kind === "number" || kind === "money") return new NumberColumn(rows, "number");
  if (kind === "whole" || kind === "date") return new NumberColumn(rows, kind);
  return kind === "yes_no" ? new YesNoColumn(rows) : new TextColumn(rows);
}
