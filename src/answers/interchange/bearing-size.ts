import bearingsCsv from "../../../data/vocabulary/bearings.csv?raw";

type Millimetres = readonly [bore: number, outside: number, width: number];

/** Bore, outside and width of every size of the list, as sealed or shielded and as open. */
const SIZES: readonly Millimetres[] = bearingsCsv.trim().split("\n").slice(1).flatMap((line): Millimetres[] => {
  const [bore, outside, open, shielded] = line.split(",").map(Number);
  if (bore === undefined || outside === undefined || open === undefined || shielded === undefined) return [];
  return open === shielded ? [[bore, outside, open]] : [[bore, outside, open], [bore, outside, shielded]];
});
const TRIPLE = /(\d+(?:[.,]\d+)?)\s*[x×*/-]\s*(\d+(?:[.,]\d+)?)\s*[x×*/-]\s*(\d+(?:[.,]\d+)?)(?!\s*[x×]\s*\d)/i;
const SEALED = /\b(2rs\w*|rs|ddu|llu|llb|vv|2?rz)\b|\d(2rs\w*|rs|ddu|llu|llb|vv|2?rz)\b|seal|rubber/i;
const SHIELDED = /\b(zz|2z|z)\b|\d(zz|2z|z)\b|shield/i;

export type Closure = "sealed" | "shielded" | "open" | "closure unknown";

/**
 * A written bearing size as `bore x outside x width` in mm; null when the text holds no three numbers.
 *
 * People write the three in any order. The largest is the outside; the other two are settled by the size list (boundary
 * plan of ISO 15). Where the list knows both orders ({3,4,8}, {3,4,10}, {4,5,13}) or neither, the written order stands.
 * Sorting by size would be wrong: widths above the bore exist (3x10x4).
 *
 * @example
 * bearingSize("7×4×2.5") // => "4x7x2.5"
 */
export function bearingSize(text: string): string | null {
  const written = TRIPLE.exec(text)?.slice(1, 4).map((number) => Number(number.replace(",", ".")));
  if (!written || written.some((number) => !(number > 0))) return null;
  const outside = Math.max(...written), at = written.indexOf(outside);
  const [first, second] = written.filter((_, i) => i !== at) as [number, number];
  const listed = (bore: number, width: number) => SIZES.some((size) => size[0] === bore && size[1] === outside && size[2] === width);
  const turned = listed(second, first) && !listed(first, second);
  return turned ? `${second}x${outside}x${first}` : `${first}x${outside}x${second}`;
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
