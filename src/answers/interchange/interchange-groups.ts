import { bearingClosure, bearingReading, sizeOfCode } from "./bearing-size.ts";
import type { BearingReading } from "./bearing-size.ts";
import type { HandGroup } from "./hand-groups.ts";
import { oRingSize } from "./o-ring-size.ts";
import { replacementChains } from "./replacement-chains.ts";

/** What decides whether two parts are the same thing. */
export type PartIdentity = {
  readonly part_no: string;
  readonly name: string | null;
  readonly family: string | null;
  readonly size: string | null;
  readonly material: string | null;
  readonly replaces: string | null;
};

/** Group of one part number; `refused` is the reason why the line cannot be planned, else null. */
export interface InterchangeRow {
  readonly part_no: string;
  readonly interchange: string;
  readonly refused: string | null;
}

export const ASSORTED = "Several parts under one number: split first, give each its own number, then it can be planned.";
const MIXED = /\b(assorted|assortment|mixed|various|per model)\b|[-_ ]mix$/i;

/** Sizes the owner settled, by part number. */
type Sizes = ReadonlyMap<string, string>;

/** How a ball bearing's size reads, by its size, its name, or the code in either; null for other parts and where nothing tells. */
function readingOf({ family, size, name, part_no, material }: PartIdentity): BearingReading | null {
  if (family !== "ball bearing") return null;
  const closure = bearingClosure(`${name ?? ""} ${part_no} ${material ?? ""}`);
  const written = bearingReading(size ?? "", closure) ?? bearingReading(name ?? "", closure);
  const code = written ? null : sizeOfCode(`${size ?? ""} ${name ?? ""} ${part_no}`, closure);
  return written ?? (code === null ? null : { size: code, other: null });
}

/** What the part is by its size, or null when only its number says so. */
function sizeKey(part: PartIdentity, sizes: Sizes): string | null {
  const { family, size, name, part_no, material } = part;
  if (family === "ball bearing") {
    const written = sizes.get(part_no) ?? readingOf(part)?.size ?? null;
    return written && `bearing ${written} ${bearingClosure(`${name ?? ""} ${part_no} ${material ?? ""}`)}`;
  }
  const ring = family === "seal" && size !== null && material !== null ? oRingSize(size) : null;
  return ring && `O-ring ${ring} ${(material ?? "").trim().toUpperCase()}`;
}

const refusal = (part: PartIdentity): string | null =>
  MIXED.test(part.name ?? "") || MIXED.test(part.part_no) ? ASSORTED : null;

/** The groups with what the owner settled, one after the other; refused lines and unknown numbers stay as they are. */
function byHand(rows: readonly InterchangeRow[], hand: readonly HandGroup[]): InterchangeRow[] {
  const group = new Map(rows.map((row) => [row.part_no, row.interchange])), fixed = new Set(rows.flatMap((row) => (row.refused === null ? [] : [row.part_no])));
  for (const one of hand) {
    if (one.kind === "size") continue;
    const known = one.part_nos.filter((number) => group.has(number) && !fixed.has(number)), first = known[0];
    if (first === undefined) continue;
    const own = `${first}, apart`, goal = one.kind === "join" ? group.get(first) ?? first : own;
    const moved = one.kind === "join" ? new Set(known.map((number) => group.get(number))) : null;
    for (const [number, at] of group) if (!fixed.has(number) && (moved ? moved.has(at) : known.includes(number))) group.set(number, goal);
  }
  return rows.map((row) => ({ ...row, interchange: group.get(row.part_no) ?? row.interchange }));
}

/**
 * The group of every part number: parts of one `replaces` chain, ball bearings of one size and closure, O-rings of one
 * size and material are the same thing. What a chain's newest number is, the older ones are too. A number that only a
 * `replaces` names has a row as well, because old findings name it. Assorted lines stay alone and carry a reason.
 *
 * @param hand what the owner settled, which counts above all that
 * @returns one row a part number, in the order of the numbers
 */
export function interchangeGroups(parts: readonly PartIdentity[], hand: readonly HandGroup[] = []): InterchangeRow[] {
  const known = new Map(parts.map((part) => [part.part_no, part]));
  const sizes = new Map(hand.flatMap((one) => (one.kind === "size" ? [[one.part_no, one.size] as const] : [])));
  const rows = replacementChains(parts).flatMap((chain) => {
    const members = chain.map((part_no) => known.get(part_no)).filter((part) => part !== undefined);
    const key = members.map((part) => sizeKey(part, sizes)).find((found) => found !== null) ?? chain[0] ?? "";
    return chain.map((part_no) => {
      const part = known.get(part_no), refused = part ? refusal(part) : null;
      return { part_no, interchange: refused === null ? key : part_no, refused };
    });
  });
  return byHand(rows, hand).sort((a, b) => (a.part_no < b.part_no ? -1 : 1));
}

/** A bearing whose size can be read in two ways; until the owner says which, the written order stands. */
export interface SizeQuestion {
  readonly part_no: string;
  readonly name: string | null;
  readonly readings: readonly [asWritten: string, turned: string];
}

/** Bearings whose size has to be asked and was not settled yet, in the order of their numbers. */
export function sizeQuestions(parts: readonly PartIdentity[], hand: readonly HandGroup[]): SizeQuestion[] {
  const settled = new Set(hand.flatMap((one) => (one.kind === "size" ? [one.part_no] : [])));
  return parts.filter((part) => !settled.has(part.part_no)).flatMap((part): SizeQuestion[] => {
    const reading = readingOf(part);
    return reading === null || reading.other === null ? [] : [{ part_no: part.part_no, name: part.name, readings: [reading.size, reading.other] }];
  }).sort((a, b) => (a.part_no < b.part_no ? -1 : 1));
}
