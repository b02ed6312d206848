/** One row of `counts.sql`. */
export type CountRow = {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly family: string | null;
  readonly maker: string | null;
  readonly model: string;
  readonly reel_kind: string | null;
  readonly inspected: number;
  readonly failed: number;
  readonly replaced: number;
  readonly replaced_routine: number;
  readonly outside: number;
  readonly outside_failed: number;
};

/** What tells one model's row from another's. */
export const rowKey = ({ position, maker, model }: Pick<CountRow, "position" | "maker" | "model">) =>
  JSON.stringify([position, maker, model]);

const COUNTS = ["inspected", "failed", "replaced", "replaced_routine", "outside", "outside_failed"] as const;

/** The rows of one position as one, over all models (`*`). */
export function allModels(rows: readonly [CountRow, ...CountRow[]]): CountRow {
  const sums = Object.fromEntries(COUNTS.map((name) => [name, rows.reduce((sum, row) => sum + row[name], 0)]));
  return { ...rows[0], maker: "*", model: "*", reel_kind: null, ...sums };
}
