import { grouped } from "../grouped.ts";
import { partsOf, telling } from "./life-lines-of.ts";
import type { WearLine } from "./wear-records.ts";

/** Conditions that wear may hang on, with the level that others are held against where there is a natural one. */
export const CONDITIONS = { rinse: "always", water: "salt", sealed: "no", tier: "mid" } as const;
export type Condition = keyof typeof CONDITIONS;
export const NOT_WRITTEN = "not written";
/** A level with fewer parts is not worth a figure of its own. */
const FEWEST_PARTS = 5;

/** The level of a condition of these parts. */
export function levelOf(line: WearLine, condition: Condition): string {
  if (condition !== "sealed") return line[condition] ?? NOT_WRITTEN;
  return line.sealed === null ? NOT_WRITTEN : line.sealed ? "yes" : "no";
}

/** One column of the fit: a level held against the reference. */
export interface LevelColumn { readonly condition: Condition; readonly level: string; readonly reference: string }

function levelsOf(lines: readonly WearLine[], condition: Condition): LevelColumn[] {
  const by = [...grouped(lines, (line) => levelOf(line, condition))].map(([level, some]) => ({ level, parts: partsOf(some) })).sort((a, b) => b.parts - a.parts);
  const usual = by.find(({ level }) => level === CONDITIONS[condition]), most = by.find(({ level }) => level !== NOT_WRITTEN);
  const reference = (usual && usual.parts >= FEWEST_PARTS ? usual : most)?.level;
  if (reference === undefined) return [];
  return by.filter(({ level, parts }) => level !== reference && (parts >= FEWEST_PARTS || level === NOT_WRITTEN)).map(({ level }) => ({ condition, level, reference }));
}

export const valueOf = (line: WearLine, { condition, level }: LevelColumn): number => Number(levelOf(line, condition) === level);

/** What of a column the others do not say: it less its parts along them (Gram–Schmidt). */
function restOf(column: readonly number[], others: readonly (readonly number[])[]): number[] {
  return others.reduce<number[]>((rest, other) => {
    const along = rest.reduce((sum, one, i) => sum + one * (other[i] as number), 0);
    return rest.map((one, i) => one - along * (other[i] as number));
  }, [...column]);
}

/** Columns that say something the ones before do not: a level that always comes with others is left out. */
function independent(lines: readonly WearLine[], columns: readonly LevelColumn[]): LevelColumn[] {
  const seen = [...new Map(lines.map((line) => [columns.map((column) => valueOf(line, column)).join(""), line])).values()];
  const kept: LevelColumn[] = [], lengths = Math.sqrt(seen.length), directions: number[][] = [seen.map(() => 1 / lengths)];
  for (const column of columns) {
    const rest = restOf(seen.map((line) => valueOf(line, column)), directions), length = Math.hypot(...rest);
    if (length < 1e-6) continue;
    kept.push(column);
    directions.push(rest.map((one) => one / length));
  }
  return kept;
}

/** The columns of a fit with all conditions, in the order rinse, water, sealed, tier. */
export function columnsOf(lines: readonly WearLine[]): readonly LevelColumn[] {
  const some = telling(lines);
  return independent(some, (Object.keys(CONDITIONS) as Condition[]).flatMap((condition) => levelsOf(some, condition)));
}
