import { actions, ambiguousWords, families, jobs, modes, modeSpellings, positions, positionSpellings, reelKinds } from "./vocabulary-tables.ts";
import type { ActionRow, AmbiguousWord, Job, Position, ReelKind } from "./vocabulary-tables.ts";

export * from "./vocabulary-tables.ts";
export { coverage } from "./coverage.ts";
export type { CoverageRow } from "./coverage.ts";

/**
 * The form in which two spellings are compared: lower case, no accents, every run of other signs one blank.
 *
 * @example
 * plainWords("AR-Clutch ") // => "ar clutch"
 */
export function plainWords(text: string): string {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, " ").trim();
}

function lookup<Value>(pairs: Iterable<readonly [string, Value]>): ReadonlyMap<string, Value> {
  const found = new Map<string, Value>();
  for (const [text, value] of pairs) if (!found.has(plainWords(text))) found.set(plainWords(text), value);
  return found;
}

const byCode: ReadonlyMap<string, Position> = new Map(positions.map((row) => [row.position, row]));
const bySpelling = lookup<string>([
  ...positions.map((row) => [row.position, row.position] as const),
  ...positions.map((row) => [row.name, row.position] as const),
  ...positionSpellings.map((row) => [row.spelling, row.position] as const),
]);
const ambiguous: ReadonlyMap<string, AmbiguousWord> = lookup(ambiguousWords.map((row) => [row.word, row] as const));

/**
 * The position with this code.
 *
 * @throws {RangeError} if no position has the code
 */
export function position(code: string): Position {
  const row = byCode.get(code);
  if (!row) throw new RangeError(`position: needs the code of a known position, not ${code}`);
  return row;
}

/**
 * The position a cell names by code, name or a known spelling; null when it names none or could mean several.
 *
 * With the reel kind, words that mean one thing on that kind are settled. A longer text is not searched.
 *
 * @example
 * positionNamed("L/R bearing") // => "line_roller_bearing"
 * positionNamed("clutch") // => null
 * positionNamed("clutch", "spinning") // => "ar_clutch"
 */
export function positionNamed(text: string, reelKind?: ReelKind | null): string | null {
  const exact = byCode.get(text.trim().toLowerCase());
  if (exact) return exact.position;
  const words = plainWords(text), doubt = ambiguous.get(words);
  if (doubt && doubt.treat !== "settled") return (reelKind && doubt.by_kind[reelKind]) ?? null;
  return bySpelling.get(words) ?? null;
}

/** Every spelling of every mode, with the families of part for which it holds (none: all). */
const modeReadings = new Map<string, { mode: string; only_families: readonly string[] }[]>();
for (const { spelling, mode, only_families } of [
  ...modeSpellings,
  ...modes.flatMap((row) => [row.mode, row.code, row.name].map((spelling) => ({ spelling, mode: row.mode, only_families: [] }))),
]) {
  const readings = modeReadings.get(plainWords(spelling)) ?? [];
  if (!readings.some((reading) => reading.mode === mode)) readings.push({ mode, only_families });
  modeReadings.set(plainWords(spelling), readings);
}

/**
 * What a cell says is wrong, as one of our words; null when unknown, or when it depends on the part and no family is given.
 *
 * @param family a word of `families`, such as `seal`
 * @example
 * modeNamed("corroded") // => "pitted"
 * modeNamed("twisted") // => null
 * modeNamed("twisted", "seal") // => "rolled"
 */
export function modeNamed(text: string, family?: string | null): string | null {
  const readings = modeReadings.get(plainWords(text)) ?? [];
  if (readings.length === 1) return readings[0]?.mode ?? null;
  const fitting = readings.filter((reading) => family && reading.only_families.includes(family));
  return fitting.length === 1 ? fitting[0]?.mode ?? null : null;
}

const byAction = lookup(actions.flatMap((row) =>
  [row.code, row.name, ...row.spellings].map((spelling) => [spelling, row] as const)));

/** The action a cell names, with whether it is routine and the grade it proves; null when unknown. */
export function actionNamed(text: string): ActionRow | null {
  return byAction.get(plainWords(text)) ?? null;
}

const byJob = lookup(jobs.flatMap((row) => [row.job, row.code, ...row.spellings].map((spelling) => [spelling, row.job] as const)));

/** The job a cell names; null when unknown. */
export function jobNamed(text: string): Job | null {
  return byJob.get(plainWords(text)) ?? null;
}

const byKind = lookup(reelKinds.flatMap((row) =>
  [row.reel_kind, ...(row.letter ? [row.letter] : []), ...row.spellings].map((spelling) => [spelling, row.reel_kind] as const)));

/** The reel kind a cell names; null when unknown. */
export function reelKindNamed(text: string): ReelKind | null {
  return byKind.get(plainWords(text)) ?? null;
}

const byFamily = lookup(families.flatMap((row) => [row.family, row.code, row.covers].map((spelling) => [spelling, row.family] as const)));

/** The family of part a cell names; null when unknown. */
export function familyNamed(text: string): string | null {
  return byFamily.get(plainWords(text)) ?? null;
}
