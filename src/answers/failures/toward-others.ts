import { pooledShares } from "../../stats/beta-binomial.ts";
import { grouped } from "../grouped.ts";
import { rowKey } from "./count-row.ts";
import type { CountRow } from "./count-row.ts";
import type { FailureRate } from "./failure-rate.ts";

export type Pooled = Pick<FailureRate, "pooled_rate" | "pooled_low" | "pooled_high" | "note">;

const WORDS = { pooled: "", "no difference between models": "no difference between models", "few models, fixed prior": "few models: drawn only weakly toward the others" };

/** Longest time without a turn for the screen. */
const TURN_MS = 30;

/**
 * Each model's share drawn toward the other models of its position, by as much as its thin data deserve.
 *
 * @returns by `rowKey`; a model that was never inspected has none
 * @throws the signal's reason when called off
 */
export async function towardOthers(models: readonly CountRow[], signal: AbortSignal | undefined): Promise<Map<string, Pooled>> {
  const inspected = models.filter((row) => row.inspected > 0), found = new Map<string, Pooled>();
  let drawn = performance.now();
  for (const rows of grouped(inspected, (row) => row.position).values()) {
    const { status, models: pooled } = pooledShares(rows);
    rows.forEach((row, i) => {
      const { share, low, high } = pooled[i] ?? { share: null, low: null, high: null };
      found.set(rowKey(row), { pooled_rate: share, pooled_low: low, pooled_high: high, note: WORDS[status] });
    });
    if (performance.now() - drawn < TURN_MS) continue;
    // A position takes some milliseconds: now and then the screen may draw and the question be called off.
    await new Promise((done) => setTimeout(done));
    signal?.throwIfAborted();
    drawn = performance.now();
  }
  return found;
}
