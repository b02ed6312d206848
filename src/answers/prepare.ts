import noSpellsSql from "../db/derive/5-no-spells.sql?raw";
import type { Engine } from "../db/engine.ts";
import groupDemandSql from "./interchange/group-demand.sql?raw";
import { loadInterchange } from "./interchange/load-interchange.ts";

/**
 * Makes what the answers need beside the derived tables: which part numbers are the same thing, and
 * what was used of each such thing. How long parts were followed is made when first asked for (`followParts`).
 *
 * Call it after every rebuild or import, once the derived tables stand.
 */
export async function prepareAnswers(engine: Engine): Promise<void> {
  await loadInterchange(engine);
  await engine.run([groupDemandSql, noSpellsSql]);
}
