import noSpellsSql from "../db/derive/5-no-spells.sql?raw";
import type { Engine } from "../db/engine.ts";
import groupDemandSql from "./interchange/group-demand.sql?raw";
import type { HandGroup } from "./interchange/hand-groups.ts";
import { loadInterchange } from "./interchange/load-interchange.ts";

/**
 * Makes what the answers need beside the derived tables: which part numbers are the same thing, and
 * what was used of each such thing. How long parts were followed is made when first asked for (`followParts`).
 *
 * Call it after every rebuild or import, once the derived tables stand.
 *
 * @param hand which parts the owner joined or split
 */
export async function prepareAnswers(engine: Engine, hand: readonly HandGroup[] = []): Promise<void> {
  await loadInterchange(engine, hand);
  await engine.run([groupDemandSql, noSpellsSql]);
}
