import { grouped } from "../grouped.ts";
import { modelName } from "../model-name.ts";
import type { LotShare } from "./lot.ts";

/** One row of `refitted.sql`; `shop` only where several shops are looked at together. */
export type RefittedRow = {
  readonly shop?: string;
  readonly size_or_part: string; readonly supplier: string | null; readonly month: number; readonly position: string;
  readonly maker: string | null; readonly model: string; readonly technician: string | null; readonly fished: number;
  /** Looked at again within the days that count as early. */
  readonly soon: boolean; readonly failed: boolean; readonly fitted: number;
};

export const fittedIn = (rows: readonly RefittedRow[]): number => rows.reduce((sum, row) => sum + row.fitted, 0);
export const failedIn = (rows: readonly RefittedRow[]): number => rows.reduce((sum, row) => sum + (row.failed ? row.fitted : 0), 0);

/** What a part is fitted into: the failures of a window are measured against the same part of the same model in the same shop. */
export const kindOf = ({ shop, position, maker, model }: RefittedRow): string => JSON.stringify([shop, position, maker, model]);
/** Parts in one place, used alike, in one shop. */
export const likeOf = ({ shop, position, fished }: RefittedRow): string => JSON.stringify([shop, position, fished]);
/** Parts in one place in one shop, used in any way. */
export const placeOf = ({ shop, position }: RefittedRow): string => JSON.stringify([shop, position]);

function shares(inside: readonly RefittedRow[], outside: readonly RefittedRow[], name: (row: RefittedRow) => string): LotShare[] {
  const others = grouped(outside, name);
  return [...grouped(inside, name)].map(([one, rows]) => {
    const other = others.get(one) ?? [];
    return { name: one, fitted: fittedIn(rows), failed_early: failedIn(rows), others_fitted: fittedIn(other), others_failed_early: failedIn(other) };
  }).sort((a, b) => b.fitted - a.fitted || (a.name < b.name ? -1 : 1));
}

export const byModel = (inside: readonly RefittedRow[], outside: readonly RefittedRow[]): LotShare[] => shares(inside, outside, modelName);
export const byTechnician = (inside: readonly RefittedRow[], outside: readonly RefittedRow[]): LotShare[] =>
  shares(inside, outside, ({ technician }) => technician ?? "not written");
export const byShop = (inside: readonly RefittedRow[], outside: readonly RefittedRow[]): LotShare[] => shares(inside, outside, ({ shop }) => shop ?? "");

/** Share to expect in the window if its fittings had failed as those outside it: kind by kind; null where no kind has one outside. */
export function expectedShare(inside: readonly RefittedRow[], outside: readonly RefittedRow[]): number | null {
  const others = grouped(outside, kindOf);
  let expected = 0, known = 0;
  for (const [kind, rows] of grouped(inside, kindOf)) {
    const other = others.get(kind) ?? [], fitted = fittedIn(other);
    if (fitted === 0) continue;
    known += fittedIn(rows);
    expected += (fittedIn(rows) * failedIn(other)) / fitted;
  }
  return known === 0 ? null : expected / known;
}
