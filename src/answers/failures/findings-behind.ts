import type { Engine } from "../../db/engine.ts";
import type { FailureFilter, FindingBehind } from "./failure-rate.ts";

export interface Behind {
  readonly findings: readonly FindingBehind[];
  /** Tickets that opened the position and had nothing written about it: counted as inspected and fine. */
  readonly fine_unwritten: number;
}

/** The findings behind one row of the failure table, newest ticket first. Maker and model `null`: all models. */
export async function findingsBehind(
  _engine: Engine,
  _filter: FailureFilter & { readonly position: string },
  _signal?: AbortSignal,
): Promise<Behind> {
  throw new Error("findingsBehind: under way");
}
