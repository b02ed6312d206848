import type { Engine } from "../../db/engine.ts";
import { pooledShares } from "../../stats/beta-binomial.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { EVERYTHING } from "../filter.ts";
import { grouped } from "../grouped.ts";
import { againstOthers } from "./against-others.ts";
import { rowKey } from "./count-row.ts";
import type { CountRow } from "./count-row.ts";
import countsSql from "./counts.sql?raw";
import type { FailureFilter, FailureRate } from "./failure-rate.ts";
import { failureValues, FEWEST_FOR_SHARE } from "./failure-values.ts";

export const ALL_FAILURES: FailureFilter = {
  ...EVERYTHING, opening: "*", denominator: "coverage", group: null, position: null,
};

type Pooled = Pick<FailureRate, "pooled_rate" | "pooled_low" | "pooled_high" | "note">;

const NOT_POOLED: Pooled = { pooled_rate: null, pooled_low: null, pooled_high: null, note: "" };
const WORDS = { pooled: "", "no difference between models": "no difference between models", "few models, fixed prior": "few models: drawn only weakly toward the others" };

/** Each model's share drawn toward the other models of its position. */
async function pooling(models: readonly CountRow[], signal: AbortSignal | undefined): Promise<Map<string, Pooled>> {
  const inspected = models.filter((row) => row.inspected > 0), found = new Map<string, Pooled>();
  for (const rows of grouped(inspected, (row) => row.position).values()) {
    const { status, models: pooled } = pooledShares(rows);
    rows.forEach((row, i) => {
      const { share, low, high } = pooled[i] ?? { share: null, low: null, high: null };
      found.set(rowKey(row), { pooled_rate: share, pooled_low: low, pooled_high: high, note: WORDS[status] });
    });
    // A position takes some 20 ms: between two, the screen may draw and the question be called off.
    await new Promise((done) => setTimeout(done));
    signal?.throwIfAborted();
  }
  return found;
}

function sentence(row: CountRow, pooled: string): string {
  const few = row.inspected === 0 ? "only written where the job does not open it: no share"
    : row.inspected < FEWEST_FOR_SHARE ? `under ${FEWEST_FOR_SHARE} inspected: the count is all there is` : "";
  return [few, pooled].filter((part) => part !== "").join("; ");
}

function rate(row: CountRow, { opening, denominator }: FailureFilter, pooled: Pooled, compared: Pick<FailureRate, "p_value" | "q_value">): FailureRate {
  const { all_models, maker, model, inspected, failed, ...rest } = row;
  const [rate_low, rate_high] = inspected === 0 ? [null, null] : shareInterval(failed, inspected);
  return {
    ...rest, maker: all_models ? "*" : maker, model: all_models ? "*" : model ?? "", opening, denominator, inspected, failed,
    rate: inspected < FEWEST_FOR_SHARE ? null : failed / inspected, rate_low, rate_high, ...pooled, ...compared, note: sentence(row, pooled.note),
  };
}

/**
 * Failed among inspected, for every position and model: first the position over all models (`*`), then model by model.
 * Positions in the order of the position list, models by name.
 *
 * A model is always drawn toward, and compared with, all models that pass the rest of the filter, also when only some are
 * shown; `*` counts those shown.
 */
export async function failureRates(engine: Engine, filter: FailureFilter, signal?: AbortSignal): Promise<readonly FailureRate[]> {
  const some = filter.maker !== null || filter.model !== null, everyone = { ...filter, maker: null, model: null };
  const [rows, all] = await Promise.all([
    engine.rows<CountRow>(countsSql, failureValues(filter), signal),
    some ? engine.rows<CountRow>(countsSql, failureValues(everyone), signal) : null,
  ]);
  const models = (all ?? rows).filter((row) => !row.all_models), pooled = await pooling(models, signal), compared = againstOthers(models);
  return rows.map((row) => {
    const key = row.all_models ? "" : rowKey(row);
    return rate(row, filter, pooled.get(key) ?? NOT_POOLED, compared.get(key) ?? { p_value: null, q_value: null });
  });
}
