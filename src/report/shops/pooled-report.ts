import { comebacks } from "../../answers/comebacks/comebacks.ts";
import { ALL_VERDICTS, failureVerdicts } from "../../answers/failures/failure-verdicts.ts";
import { DENOMINATORS, EVERYTHING } from "../../answers/filter.ts";
import { wearOf } from "../../answers/wear/all-wear.ts";
import { ALL_WEAR, wearRecords } from "../../answers/wear/wear-records.ts";
import { CLOCKS } from "../../answers/wear/wear.ts";
import type { Engine } from "../../db/engine.ts";
import { comebackTables } from "../comeback-tables.ts";
import { failureTable } from "../failure-table.ts";
import type { ReportTable } from "../table.ts";
import { verdictTable } from "../verdict-table.ts";
import { wearTable } from "../wear-tables.ts";
import { demandTables } from "./demand-tables.ts";
import { pooledLabour } from "./pooled-labour.ts";
import { pooledLots } from "./pooled-lots.ts";

/** Told before each part: the long way takes minutes. */
export type Say = (step: string) => void;

/**
 * What all shops' records say together: failures, bad batches and minutes like with like within each shop, parts that came back,
 * wear, and what was used of each part.
 *
 * What asks for rows of single reels (curves of coming back, conditions of wear) or belongs to one bench and one shelf (orders,
 * weeks to come) stands in each shop's own report.
 */
export async function pooledReport(engine: Engine, say: Say): Promise<readonly ReportTable[]> {
  const verdicts = [];
  for (const denominator of DENOMINATORS) {
    say(`Comparing models within shops, ${denominator}`);
    verdicts.push(...await failureVerdicts(engine, { ...ALL_VERDICTS, denominator }, undefined, { drawn: "all" }));
  }
  say("Counting shares");
  const failures = await failureTable(engine, verdicts);
  say("Looking for parts that came back");
  const [, back] = comebackTables(await comebacks(engine, { ...EVERYTHING, group: null, position: null, watched_until: "records end", curves: false }));
  say("Looking for bad batches over all shops");
  const batches = await pooledLots(engine);
  say("Comparing minutes within shops");
  const minutes = await pooledLabour(engine);
  say("Adding up what was used");
  const used = await demandTables(engine), wear = [];
  for (const clock of CLOCKS) {
    say(`Following parts, ${clock}`);
    wear.push(...(await wearOf(await wearRecords(engine, { ...ALL_WEAR, clock }))).rows);
  }
  return [failures, verdictTable(verdicts), back, batches, minutes, ...used, wearTable(wear)];
}
