import type { CellValue } from "./checking/cell.ts";
import type { Table } from "./columns.ts";
import { KeyCounter } from "./key-counter.ts";

/** Letters of a key. */
export const KEY_LETTERS = 11;

const LETTERS = Uint8Array.from("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_", (letter) => letter.charCodeAt(0));
const letter = (six: number) => LETTERS[six & 63] ?? 0;

/** 64 bits as eleven letters of base64url (RFC 4648 section 5), which the engine keeps without a pointer. */
function letters(high: number, low: number): string {
  return String.fromCharCode(
    letter(high >>> 26), letter(high >>> 20), letter(high >>> 14), letter(high >>> 8), letter(high >>> 2),
    letter(((high & 3) << 4) | (low >>> 28)), letter(low >>> 22), letter(low >>> 16), letter(low >>> 10), letter(low >>> 4),
    letter((low & 15) << 2),
  );
}

/** Spreads every bit of a lane over the whole lane; the finaliser of MurmurHash3 (public domain), constants from memory. */
function spread(lane: number): number {
  let mixed = lane ^ (lane >>> 16);
  mixed = Math.imul(mixed, 0x85ebca6b);
  mixed ^= mixed >>> 13;
  mixed = Math.imul(mixed, 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}

/** FNV-1a (32 bits) of a column's name. */
function nameHash(name: string): number {
  let lane = 0x811c9dc5;
  for (let at = 0; at < name.length; at += 1) lane = Math.imul(lane ^ name.charCodeAt(at), 0x01000193);
  return lane >>> 0;
}

/** Stands between two cells, so that letters cannot move from one to the next. */
const END_OF_CELL = 0x1e;

/**
 * Keys that tell a row that is known from a new one, for the rows of one table in one file.
 *
 * A key is 64 bits of the row's content: two multiplicative lanes (FNV-1a, and one with a rotation) finished crosswise, over
 * the cells that hold something with their columns' names. Among ten million rows the chance of one equal pair is about 3
 * in a million; it guards against chance, not against intent. A table that gets a new column keeps the keys of its rows.
 *
 * In tables where a row may stand twice (`another row`), the second row of the same content has another key than the
 * first, so that two equal findings stay two, and a file that is imported again adds none.
 */
export class RowKeys {
  private readonly seeds: readonly number[];
  private readonly names: readonly string[];
  private readonly seen: KeyCounter | null;
  private high = 0;
  private low = 0;

  constructor({ columns, same_key }: Table) {
    this.names = columns.map(({ name }) => name);
    this.seeds = this.names.map(nameHash);
    this.seen = same_key === "another row" ? new KeyCounter() : null;
  }

  /**
   * @param values one for each column of the table, in its order
   * @param guessed columns whose value is a guess: a better guess must not make another row of it
   */
  keyOf(values: readonly CellValue[], guessed: readonly string[] = []): string {
    this.hash(values, guessed);
    const nth = this.seen?.count(this.high, this.low) ?? 1;
    if (nth > 1) {
      const high = spread(this.high ^ Math.imul(nth, 0x9e3779b1));
      return letters(high, spread(this.low ^ high));
    }
    return letters(this.high, this.low);
  }

  private hash(values: readonly CellValue[], guessed: readonly string[]): void {
    let one = 0x811c9dc5, other = 0x9e3779b9;
    for (let column = 0; column < this.seeds.length; column += 1) {
      const value = values[column] ?? null;
      if (value === null || (guessed.length > 0 && guessed.includes(this.names[column] ?? ""))) continue;
      const text = typeof value === "string" ? value : String(value), seed = this.seeds[column] ?? 0;
      one = Math.imul(one ^ seed, 0x01000193);
      other = Math.imul(other ^ seed, 0x5bd1e995);
      for (let at = 0; at < text.length; at += 1) {
        const code = text.charCodeAt(at);
        one = Math.imul(one ^ code, 0x01000193);
        other = Math.imul(other ^ code, 0x5bd1e995);
        other = (other << 13) | (other >>> 19);
      }
      one = Math.imul(one ^ END_OF_CELL, 0x01000193);
      other = Math.imul(other ^ END_OF_CELL, 0x5bd1e995) ^ text.length;
    }
    this.low = spread(other ^ spread(one));
    this.high = spread(one ^ (this.low >>> 7) ^ (other << 3));
  }
}
