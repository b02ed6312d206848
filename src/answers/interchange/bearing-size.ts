import bearingsCsv from "../../../data/vocabulary/bearings.csv?raw";

type Millimetres = readonly [bore: number, outside: number, width: number];

/** Rows of the size list as they are written. */
const LISTED = bearingsCsv.trim().split("\n").slice(1).map((line) => line.split(","));
/** Bore, outside and width of every size of the list, as open and as sealed or shielded. */
const OPEN: readonly Millimetres[] = LISTED.map(([bore, outside, open]) => [Number(bore), Number(outside), Number(open)]);
const CLOSED: readonly Millimetres[] = LISTED.map(([bore, outside, , shielded]) => [Number(bore), Number(outside), Number(shielded)]);
const SIZES: readonly Millimetres[] = [...OPEN, ...CLOSED];
/** Closed and open size of every code of the list: MR117 and 677 are 7x11x3, open 7x11x2.5. */
const CODES = new Map(LISTED.flatMap(([bore = "", outside = "", open = "", shielded = "", ...codes]) => codes.slice(0, 2).filter((code) => code !== "")
  .map((code) => [code, { closed: `${bore}x${outside}x${shielded}`, open: `${bore}x${outside}x${open}` }] as const)));
const CODE = /(?:^|[^a-z0-9])(?:s{1,2}|w)?(mr\d{2,3}|6\d{2}|6[789]0\d|61[789]0\d)(?=$|[^0-9]|2rs|2z)/gi;
const TRIPLE = /(\d+(?:[.,]\d+)?)\s*[x×*/-]\s*(\d+(?:[.,]\d+)?)\s*[x×*/-]\s*(\d+(?:[.,]\d+)?)(?!\s*[x×]\s*\d)/i;
const SEALED = /\b(2rs\w*|rs|ddu|llu|llb|vv|2?rz)\b|\d(2rs\w*|rs|ddu|llu|llb|vv|2?rz)\b|seal|rubber/i;
const SHIELDED = /\b(zz|2z|z)\b|\d(zz|2z|z)\b|shield/i;

export type Closure = "sealed" | "shielded" | "open" | "closure unknown";

/** A written bearing size; `other` is the other way to read it where the size list knows both. */
export interface BearingReading { readonly size: string; readonly other: string | null }

/**
 * A written bearing size as `bore x outside x width` in mm; null when the text holds no three numbers.
 *
 * People write the three in any order. The largest is the outside; the other two are settled by the size list (boundary
 * plan of ISO 15). Where the list knows both orders ({3,4,8}, {3,4,10}, {4,5,13}) the closure may settle it, because
 * open ones are narrower (4x10x3 is open, shielded it is 4x10x4); else the written order stands and the other is told, to
 * be asked. Where the list knows neither the written order stands.
 * Sorting by size would be wrong: widths above the bore exist (3x10x4).
 *
 * @example
 * bearingReading("7×4×2.5"); // => { size: "4x7x2.5", other: null }
 * bearingReading("4x8x3"); // => { size: "4x8x3", other: "3x8x4" }
 * bearingReading("4x10x3", "shielded"); // => { size: "3x10x4", other: null }
 */
export function bearingReading(text: string, closure: Closure = "closure unknown"): BearingReading | null {
  const written = TRIPLE.exec(text)?.slice(1, 4).map((number) => Number(number.replace(",", ".")));
  if (!written || written.some((number) => !(number > 0))) return null;
  const outside = Math.max(...written), at = written.indexOf(outside);
  const [first, second] = written.filter((_, i) => i !== at) as [number, number];
  const listed = (bore: number, width: number, sizes = SIZES) => sizes.some((size) => size[0] === bore && size[1] === outside && size[2] === width);
  const as = (bore: number, width: number) => `${bore}x${outside}x${width}`, straight = listed(first, second), turned = listed(second, first);
  if (straight && turned && first !== second) {
    const known = closure === "closure unknown" ? SIZES : closure === "open" ? OPEN : CLOSED, [asWritten, other] = [listed(first, second, known), listed(second, first, known)];
    if (asWritten !== other) return { size: asWritten ? as(first, second) : as(second, first), other: null };
    return { size: as(first, second), other: as(second, first) };
  }
  return { size: turned && !straight ? as(second, first) : as(first, second), other: null };
}

/**
 * The size of `bearingReading` alone.
 *
 * @example
 * bearingSize("7×4×2.5") // => "4x7x2.5"
 */
export const bearingSize = (text: string): string | null => bearingReading(text)?.size ?? null;

/**
 * Size of a bearing named by its code, the width by how it is closed; null where no code of the list is there, or two
 * that differ, or the code does not tell the width because nobody wrote how it is closed.
 *
 * @example
 * sizeOfCode("SMR117-2RS", "sealed"); // => "7x11x3"
 * sizeOfCode("MR117", "closure unknown"); // => null
 */
export function sizeOfCode(name: string, closure: Closure): string | null {
  const sizes = new Set([...name.matchAll(CODE)].flatMap((match) => {
    const found = CODES.get((match[1] ?? "").toUpperCase());
    if (found === undefined) return [];
    return closure === "closure unknown" && found.open !== found.closed ? [] : [closure === "open" ? found.open : found.closed];
  }));
  return sizes.size === 1 ? [...sizes][0] ?? null : null;
}

/**
 * How a ball bearing is closed, by the words and suffixes in its name; unknown when none or both are there.
 *
 * @example
 * bearingClosure("MR117-2RS stainless") // => "sealed"
 */
export function bearingClosure(name: string): Closure {
  const sealed = SEALED.test(name), shielded = SHIELDED.test(name);
  if (sealed !== shielded) return sealed ? "sealed" : "shielded";
  return !sealed && /\bopen\b/i.test(name) ? "open" : "closure unknown";
}
