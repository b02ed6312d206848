import type { Engine } from "../db/engine.ts";
import { loadInterchange } from "./interchange/load-interchange.ts";

/**
 * Makes what the answers need beside the derived tables: which part numbers are the same thing.
 *
 * Call it after every rebuild or import, once the derived tables stand.
 */
export async function prepareAnswers(engine: Engine): Promise<void> {
  await loadInterchange(engine);
}
