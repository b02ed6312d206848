import type { Engine, Row } from "../../db/engine.ts";
import conditionsSql from "./conditions.sql?raw";
import type { ConditionRow } from "./peers.ts";

/** One row of `conditions.sql`: a part on a model with all its cells, which a worker can be sent in a tenth of the time. */
export type ConditionCells = Pick<ConditionRow, "position" | "maker" | "model" | "reel_kind"> & {
  /** 1024 × (256 × shop + season - 1900) + condition. */
  readonly cells: readonly number[];
  readonly inspected: readonly number[];
  readonly failed: readonly number[];
};

/** Every part on every model, by season and conditions; `values` are the parameters of `conditions.sql`. */
export const conditionCells = (engine: Engine, values: Row, signal?: AbortSignal): Promise<ConditionCells[]> => engine.rows<ConditionCells>(conditionsSql, values, signal);

/** A row for each cell. */
export function conditionRows(packed: readonly ConditionCells[]): ConditionRow[] {
  return packed.flatMap(({ position, maker, model, reel_kind, cells, inspected, failed }) => cells.map((cell, i) => ({
    position, maker, model, reel_kind, condition: cell % 1024, season: 1900 + (Math.floor(cell / 1024) % 256), shop: Math.floor(cell / 262_144), inspected: inspected[i] as number, failed: failed[i] as number,
  })));
}
