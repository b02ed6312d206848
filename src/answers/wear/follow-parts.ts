import spellsSql from "../../db/derive/5-spells.sql?raw";
import type { Engine } from "../../db/engine.ts";
import type { WorkMeans } from "../worker-work.ts";

/** Makes the tables of parts followed from fitting to end, unless they stand since the records last changed. */
export async function followParts(engine: Engine, { signal, report }: WorkMeans = {}): Promise<void> {
  report?.({ step: "Following parts from visit to visit", done: 0, total: null });
  await engine.run([spellsSql], {}, signal);
}
