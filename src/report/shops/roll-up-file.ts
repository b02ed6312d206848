import { conditionCells } from "../../answers/failures/condition-rows.ts";
import { rollUpFileOf, rollUpOf } from "../../answers/elsewhere/roll-up.ts";
import type { Engine } from "../../db/engine.ts";

const EVERYTHING = { reel_kind: null, water: null, from_date: null, to_date: null, group_code: null, position: null, denominator: "coverage" };

/** What all shops counted, as one small file that another shop may open: no shop's name, no ticket, no customer. */
export async function rollUpFile(engine: Engine): Promise<Uint8Array> {
  return rollUpFileOf(rollUpOf(await conditionCells(engine, EVERYTHING)));
}
