import type { Engine } from "../../db/engine.ts";
import { rowKey } from "./count-row.ts";
import type { FailureFilter } from "./failure-rate.ts";
import { failureValues } from "./failure-values.ts";
import reelsSql from "./reels-inspected.sql?raw";

type ReelsRow = { readonly position: string; readonly maker: string | null; readonly model: string; readonly reels: number };

/**
 * Reels told apart by serial among the inspected; a reel is told apart within its model, so all models (`*`) are their sum.
 * Telling them apart takes as long as all the counting, so it is asked for only where it is written down.
 *
 * @returns by `rowKey`
 */
export async function reelsInspected(engine: Engine, filter: FailureFilter, signal?: AbortSignal): Promise<ReadonlyMap<string, number>> {
  const found = new Map<string, number>();
  for (const row of await engine.rows<ReelsRow>(reelsSql, failureValues(filter), signal)) {
    const all = rowKey({ position: row.position, maker: "*", model: "*" });
    found.set(rowKey(row), row.reels);
    found.set(all, (found.get(all) ?? 0) + row.reels);
  }
  return found;
}
