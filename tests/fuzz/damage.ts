import { allRows, opened } from "../records/formats/opening.ts";

/** One change to a file, as a disk or a line may make it. */
export interface Damage {
  readonly what: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** All eight bits of every byte with `SALTBENCH_FLIPS=all`, else one of each, another one from byte to byte. */
const ALL_BITS = process.env["SALTBENCH_FLIPS"] === "all";

/** Bytes by which a file is told to be one of these. */
const SIGNED = 4;

/** Every byte changed in one bit (or in each of its bits), and the file cut off before every byte. */
export function* everyDamage(good: Uint8Array): Generator<Damage> {
  for (let at = 0; at < good.length; at += 1) {
    for (const bit of ALL_BITS ? [0, 1, 2, 3, 4, 5, 6, 7] : [(at * 5) % 8]) {
      const bytes = good.slice() as Uint8Array<ArrayBuffer>;
      bytes[at] = (bytes[at] as number) ^ (1 << bit);
      yield { what: `bit ${bit} of byte ${at}`, bytes };
    }
    // Three letters are a text like any other; it holds no rows.
    if (at >= SIGNED) yield { what: `cut off before byte ${at}`, bytes: good.slice(0, at) as Uint8Array<ArrayBuffer> };
  }
}

/** What became of damaged files. */
export interface Ends {
  /** Refused with a sentence for the owner. */
  found: number;
  /** Read, and every cell is as it was. */
  same: number;
  /** Read, and a cell is another; which ones. */
  readonly other: string[];
  /** Neither: an error that is no sentence for the owner. */
  readonly thrown: string[];
}

const SENTENCE = /^[A-Z“][^\n]*[.?]$/;

/** The cells of every sheet with its name, as the import meets them. */
async function cellsOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const { sheets } = await opened(bytes), all = [];
  for (const sheet of sheets) all.push([sheet.name, (await allRows(sheet)).map(({ cells, line, typed }) => [cells, line, typed && [...typed]])]);
  return JSON.stringify(all);
}

/** Reads a file with every damage. @throws whatever reading the undamaged file throws */
export async function endsOf(good: Uint8Array<ArrayBuffer>): Promise<Ends> {
  const wanted = await cellsOf(good), ends: Ends = { found: 0, same: 0, other: [], thrown: [] };
  for (const { what, bytes } of everyDamage(good)) {
    try {
      if ((await cellsOf(bytes)) === wanted) ends.same += 1;
      else ends.other.push(what);
    } catch (error) {
      if (error instanceof Error && error.name === "Unreadable" && SENTENCE.test(error.message)) ends.found += 1;
      else ends.thrown.push(`${what}: ${String(error)}`);
    }
  }
  return ends;
}
