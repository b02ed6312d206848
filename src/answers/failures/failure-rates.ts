import type { Engine } from "../../db/engine.ts";
import { shareInterval } from "../../stats/share-interval.ts";
import { EVERYTHING } from "../filter.ts";
import { grouped } from "../grouped.ts";
import { againstOthers } from "./against-others.ts";
import type { Compared } from "./against-others.ts";
import { allModels, rowKey } from "./count-row.ts";
import type { CountRow } from "./count-row.ts";
import countsSql from "./counts.sql?raw";
import type { FailureFilter, FailureRate } from "./failure-rate.ts";
import { failureValues, FEWEST_FOR_SHARE } from "./failure-values.ts";
import { towardOthers } from "./toward-others.ts";
import type { Pooled } from "./toward-others.ts";

export const ALL_FAILURES: FailureFilter = {
  ...EVERYTHING, opening: "*", denominator: "coverage", group: null, position: null,
};

const NOT_POOLED: Pooled = { pooled_rate: null, pooled_low: null, pooled_high: null, note: "" };
const NOT_COMPARED: Compared = { p_value: null, q_value: null };

function sentence(row: CountRow, pooled: string): string {
  const few = row.inspected === 0 ? "only written where the job does not open it: no share"
    : row.inspected < FEWEST_FOR_SHARE ? `under ${FEWEST_FOR_SHARE} inspected: the count is all there is` : "";
  return [few, pooled].filter((part) => part !== "").join("; ");
}

function rate(row: CountRow, { opening, denominator }: FailureFilter, pooled = NOT_POOLED, compared = NOT_COMPARED): FailureRate {
  const { inspected, failed } = row;
  const [rate_low, rate_high] = inspected === 0 ? [null, null] : shareInterval(failed, inspected);
  return {
    ...row, opening, denominator, rate: inspected < FEWEST_FOR_SHARE ? null : failed / inspected, rate_low, rate_high,
    ...pooled, ...compared, note: sentence(row, pooled.note),
  };
}

const counts = (engine: Engine, filter: FailureFilter, signal: AbortSignal | undefined) =>
  engine.rows<CountRow>(countsSql, failureValues(filter), signal);

/** Each position over all models, followed by its models. */
function withAllModels(rows: readonly CountRow[]): CountRow[] {
  return [...grouped(rows, (row) => row.position).values()].flatMap(([first, ...others]) => (first ? [allModels([first, ...others]), first, ...others] : []));
}

/** The same rows as `failureRates` with the plain counts and limits only: nothing is drawn toward or compared with others. */
export async function failureCounts(engine: Engine, filter: FailureFilter, signal?: AbortSignal): Promise<readonly FailureRate[]> {
  return withAllModels(await counts(engine, filter, signal)).map((row) => rate(row, filter));
}

/**
 * Failed among inspected, for every position and model: first the position over all models (`*`), then model by model.
 * Positions in the order of the position list, models by name.
 *
 * A model is always drawn toward, and compared with, all models that pass the rest of the filter, also when only some are
 * shown; `*` counts those shown.
 */
export async function failureRates(engine: Engine, filter: FailureFilter, signal?: AbortSignal): Promise<readonly FailureRate[]> {
  const some = filter.maker !== null || filter.model !== null;
  const rows = await counts(engine, filter, signal);
  const models = some ? await counts(engine, { ...filter, maker: null, model: null }, signal) : rows;
  const pooled = await towardOthers(models, signal), compared = againstOthers(models);
  return withAllModels(rows).map((row) => rate(row, filter, pooled.get(rowKey(row)), compared.get(rowKey(row))));
}
