/** One row of `counts.sql`. */
export type CountRow = {
  readonly position: string;
  readonly position_name: string;
  readonly group_code: string | null;
  readonly group_name: string | null;
  readonly family: string | null;
  readonly all_models: boolean;
  readonly maker: string | null;
  readonly model: string | null;
  readonly reel_kind: string | null;
  readonly inspected: number;
  readonly failed: number;
  readonly replaced: number;
  readonly replaced_routine: number;
  readonly outside: number;
  readonly outside_failed: number;
  readonly reels: number;
};

/** What tells one model's row from another's. */
export const rowKey = ({ position, maker, model }: Pick<CountRow, "position" | "maker" | "model">) =>
  JSON.stringify([position, maker, model]);
