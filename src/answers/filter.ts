/** Which records an answer looks at; `null` means all. Days are `YYYY-MM-DD`, both included. */
export interface RecordsFilter {
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly water: string | null;
  readonly from: string | null;
  readonly to: string | null;
}

export const EVERYTHING: RecordsFilter = { reel_kind: null, maker: null, model: null, water: null, from: null, to: null };

/** How the reel came in: `complaint` holds everything that came with something wrong (complaint, accident, immersion). */
export type Opening = "*" | "planned" | "complaint";
export const OPENINGS: readonly Opening[] = ["*", "planned", "complaint"];

/** What counts as inspected: what the job opens (`coverage`), or only positions somebody wrote down (`strict`). */
export type Denominator = "coverage" | "strict";
export const DENOMINATORS: readonly Denominator[] = ["coverage", "strict"];

/** The filter as the parameters `reel_kind, maker, model, water, from_date, to_date` of a statement. */
export function filterValues({ reel_kind, maker, model, water, from, to }: RecordsFilter) {
  return { reel_kind, maker, model, water, from_date: from, to_date: to };
}
