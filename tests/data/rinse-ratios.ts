import { makeDemo } from "../../data/demo-shop/demo.ts";
import type { Row } from "../../data/demo-shop/rows.ts";
import { conditionFit, effectsOf } from "../../src/answers/wear/effects.ts";
import { prepareAnswers } from "../../src/answers/prepare.ts";
import { ALL_WEAR, wearRecords } from "../../src/answers/wear/wear-records.ts";
import type { Limits, WearStatus } from "../../src/answers/wear/wear.ts";
import type { Engine } from "../../src/db/engine.ts";
import { openNodeEngine } from "../../src/db/open-node.ts";
import { clearImported, derive, prepareSchema } from "../../src/db/prepare.ts";
import { loadVocabulary } from "../../src/records/load-vocabulary.ts";

export const POSITION = "line_roller_bearing";
export interface RinseRatio { readonly seed: number; readonly status: WearStatus; readonly shape: number | null; readonly never: Limits; readonly sometimes: Limits }

/** What spells of one position need; the rest of a shop would only take time. */
const NEEDED: Readonly<Record<string, readonly string[]>> = {
  tickets: ["ticket_no", "received_on", "finished_on", "maker", "model", "reel_kind", "serial", "water", "salt_days", "use_days", "months_since_service", "rinse", "came_in", "job", "labour_min", "outcome"],
  findings: ["ticket_no", "position", "grade", "action", "routine"], models: ["maker", "model", "reel_kind", "sealed", "tier"], fits: ["maker", "model", "position", "qty"],
};
const YES_NO = new Set(["routine", "sealed"]);

function literal(name: string, value: Row[string] | undefined): string {
  if (value === null || value === undefined || value === "") return "null";
  if (YES_NO.has(name)) return String(value === "yes");
  return typeof value === "number" ? String(value) : `'${value.replaceAll("'", "''")}'`;
}

/** Fills an engine that knows the vocabulary with the spinning reels of a seed's shop and what was found at one of their parts. */
export async function fillPosition(engine: Engine, seed: number): Promise<void> {
  const { tables } = makeDemo(seed), kept: Record<string, readonly Row[]> = {
    ...tables, tickets: tables.tickets.filter((row) => row["reel_kind"] === "spinning" || !row["reel_kind"]), findings: tables.findings.filter((row) => row["position"] === POSITION),
  };
  await clearImported(engine);
  await engine.run(Object.entries(NEEDED).map(([table, columns]) =>
    `insert into ledger.${table} (${columns.join(", ")}) values ${(kept[table] ?? []).map((row) => `(${columns.map((name) => literal(name, row[name])).join(", ")})`).join(", ")}`));
  await derive(engine);
  await prepareAnswers(engine);
}

/** How many days of rinsed reels wear as much as one of reels never, or sometimes, rinsed, in the shop of each seed. */
export async function rinseRatios(seeds: readonly number[]): Promise<readonly RinseRatio[]> {
  const engine = await openNodeEngine(), found: RinseRatio[] = [];
  try {
    await prepareSchema(engine);
    await loadVocabulary(engine);
    for (const seed of seeds) {
      await fillPosition(engine, seed);
      const { lines } = await wearRecords(engine, ALL_WEAR, { position: POSITION, conditions: true }), fit = conditionFit(lines), effects = effectsOf(lines, fit, POSITION);
      const of = (level: string) => effects.find((effect) => effect.condition === "rinse" && effect.level === level)?.time_ratio ?? { value: null, low: null, high: null };
      found.push({ seed, status: fit.status, shape: fit.fit?.shape ?? null, never: of("never"), sometimes: of("sometimes") });
    }
    return found;
  } finally {
    await engine.close();
  }
}
