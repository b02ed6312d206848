import { falseDiscovery } from "../../stats/false-discovery.ts";
import { grouped } from "../grouped.ts";
import { rowKey } from "./count-row.ts";
import type { CountRow } from "./count-row.ts";

export interface Compared {
  readonly p_value: number | null;
  readonly q_value: number | null;
}

/** Chance of a difference this large between this model and all others at the position, were there none. */
function pValue(_row: CountRow, _inspected: number, _failed: number): number | null {
  return null;
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
