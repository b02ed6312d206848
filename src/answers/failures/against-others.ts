import { compareShares } from "../../stats/compare-shares.ts";
import { falseDiscovery } from "../../stats/false-discovery.ts";
import { grouped } from "../grouped.ts";
import { rowKey } from "./count-row.ts";
import type { CountRow } from "./count-row.ts";

export interface Compared {
  readonly p_value: number | null;
  readonly q_value: number | null;
}

/** Exact mid-p of this model against all others at the position; null where one side was never inspected. */
function pValue(row: CountRow, inspected: number, failed: number): number | null {
  return row.inspected === 0 || inspected === 0 ? null : compareShares(row, { failed, inspected }).pMid;
}

/**
 * Every model against all other models at its position; q counts all the looks within one family of parts.
 *
 * @returns by `rowKey`; null where there is no other model to compare with
 */
export function againstOthers(models: readonly CountRow[]): Map<string, Compared> {
  const looks = [...grouped(models, (row) => row.position).values()].flatMap((rows) => {
    const inspected = rows.reduce((sum, row) => sum + row.inspected, 0), failed = rows.reduce((sum, row) => sum + row.failed, 0);
    return rows.map((row) => ({ row, p_value: pValue(row, inspected - row.inspected, failed - row.failed) }));
  });
  return new Map([...grouped(looks, ({ row }) => row.family ?? row.position).values()].flatMap((family) => {
    const q = falseDiscovery(family.map(({ p_value }) => p_value));
    return family.map(({ row, p_value }, i) => [rowKey(row), { p_value, q_value: q[i] ?? null }] as const);
  }));
}
