import type { CellValue } from "./checking/cell.ts";
import type { Table } from "./columns.ts";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** 64 bits as eleven letters of base64url (RFC 4648 section 5), which the engine keeps without a pointer. */
function letters(high: number, low: number): string {
  let text = LETTERS.charAt(high >>> 28);
  for (let shift = 22; shift >= 4; shift -= 6) text += LETTERS.charAt((high >>> shift) & 63);
  text += LETTERS.charAt(((high & 15) << 2) | (low >>> 30));
  for (let shift = 24; shift >= 0; shift -= 6) text += LETTERS.charAt((low >>> shift) & 63);
  return text;
}

/** Spreads every bit of a lane over the whole lane; the finaliser of MurmurHash3 (public domain), constants from memory. */
function spread(lane: number): number {
  let mixed = lane ^ (lane >>> 16);
  mixed = Math.imul(mixed, 0x85ebca6b);
  mixed ^= mixed >>> 13;
  mixed = Math.imul(mixed, 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

/**
 * A number of 64 bits for a text, written as eleven letters. Not for secrets: it guards against chance, not against intent.
 *
 * Two multiplicative lanes (FNV-1a, and one with a rotation) finished crosswise; among ten million rows the chance of one
 * equal pair is about 3 in a million.
 */
export function textHash(text: string): string {
  let one = 0x811c9dc5, other = 0x9e3779b9;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ code, 0x5bd1e995);
    other = (other << 13) | (other >>> 19);
  }
  const high = spread(one ^ text.length), low = spread(other ^ high);
  return letters(spread(high ^ (low >>> 7)), low);
}

/**
 * The row's content as one text: the columns that hold something, by name. A table that gets a new column keeps the keys
 * of the rows it has.
 */
export function rowContent(table: Table, values: readonly CellValue[], without: readonly string[] = []): string {
  let text = "";
  for (const [at, { name }] of table.columns.entries()) {
    const value = values[at] ?? null;
    if (value !== null && !without.includes(name)) text += `${name}\u001F${String(value)}\u001E`;
  }
  return text;
}

/**
 * Keys that tell a row that is known from a new one, for the rows of one table in one file.
 *
 * In tables where a row may stand twice (`another row`), the second row of the same content has another key than the
 * first, so that two equal findings stay two, and a file that is imported again adds none.
 */
export class RowKeys {
  private readonly seen = new Map<string, number>();
  private readonly table: Table;

  constructor(table: Table) {
    this.table = table;
  }

  /** @param guessed columns whose value is a guess: a better guess must not make another row of it */
  keyOf(values: readonly CellValue[], guessed: readonly string[] = []): string {
    const content = rowContent(this.table, values, guessed);
    const key = textHash(content);
    if (this.table.same_key !== "another row") return key;
    const nth = (this.seen.get(key) ?? 0) + 1;
    this.seen.set(key, nth);
    return nth === 1 ? key : textHash(`${content}\u001D${nth}`);
  }
}
