import type { Engine } from "../../db/engine.ts";
import type { FailureFilter, FindingBehind } from "./failure-rate.ts";
import { failureValues } from "./failure-values.ts";
import findingsSql from "./findings-behind.sql?raw";
import unwrittenSql from "./unwritten.sql?raw";

export interface Behind {
  readonly findings: readonly FindingBehind[];
  /** Tickets that opened the position and had nothing written about it: counted as inspected and fine, unless `strict`. */
  readonly fine_unwritten: number;
  /** The counts of that row: each ticket once, however many findings it has. */
  readonly inspected: number;
  readonly failed: number;
  /** Findings whose job does not open the position: listed, in neither count. */
  readonly outside: number;
}

const tickets = (findings: readonly FindingBehind[]): number => new Set(findings.map(({ ticket_no }) => ticket_no)).size;

/** The findings behind one row of the failure table, newest ticket first. Maker and model `null`: all models. */
export async function findingsBehind(
  engine: Engine,
  filter: FailureFilter & { readonly position: string },
  signal?: AbortSignal,
): Promise<Behind> {
  const values = failureValues(filter);
  const [findings, unwritten] = await Promise.all([
    engine.rows<FindingBehind>(findingsSql, values, signal),
    engine.rows<{ tickets: number }>(unwrittenSql, values, signal),
  ]);
  const fine_unwritten = unwritten[0]?.tickets ?? 0, counted = findings.filter((one) => one.counted);
  return {
    findings, fine_unwritten, inspected: tickets(counted) + fine_unwritten, failed: tickets(counted.filter(({ failed }) => failed)),
    outside: findings.length - counted.length,
  };
}
