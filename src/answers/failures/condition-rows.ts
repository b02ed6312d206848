import type { Engine, Row } from "../../db/engine.ts";
import conditionsSql from "./conditions.sql?raw";
import type { ConditionRow } from "./peers.ts";

type PackedRow = Pick<ConditionRow, "position" | "maker" | "model" | "reel_kind"> & { readonly cells: readonly number[]; readonly inspected: readonly number[]; readonly failed: readonly number[] };

/** Every part on every model, by season and conditions; the parameters are those of `conditions.sql`. */
export async function conditionRows(engine: Engine, values: Row, signal?: AbortSignal): Promise<ConditionRow[]> {
  const packed = await engine.rows<PackedRow>(conditionsSql, values, signal);
  return packed.flatMap(({ position, maker, model, reel_kind, cells, inspected, failed }) => cells.map((cell, i) => ({
    position, maker, model, reel_kind, condition: cell % 1024, season: 1900 + Math.floor(cell / 1024), inspected: inspected[i] as number, failed: failed[i] as number,
  })));
}
