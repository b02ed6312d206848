import { saidInText } from "../wording.ts";
import type { PartClass } from "./restock-line.ts";

/** Chance of not running out before the next order arrives, by class of part. */
export type ServiceLevels = Readonly<Record<PartClass, number>>;

/** Name of the ledger's setting that keeps the levels, as JSON. */
export const SERVICE_LEVELS_SETTING = "service levels";

/** Levels until the owner says otherwise: our own, no source. */
export const USUAL_LEVELS: ServiceLevels = { A: 0.95, B: 0.9, C: 0.8 };

const CLASSES = ["A", "B", "C"] as const;
/** Below even chances an order advice says nothing, above 99.9 % it asks for more than any shelf holds. */
const LEAST = 0.5, MOST = 0.999;

const good = (value: unknown): value is number => typeof value === "number" && value >= LEAST && value <= MOST;

/**
 * The levels as they were kept; one that cannot be is left at the usual one and named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 */
export function readServiceLevels(kept: string | null): { levels: ServiceLevels; faults: readonly string[] } {
  if (kept === null || kept === "") return { levels: USUAL_LEVELS, faults: [] };
  let found: unknown;
  try {
    found = JSON.parse(kept);
  } catch {
    return { levels: USUAL_LEVELS, faults: [`How seldom a part may run out cannot be read, so the usual levels count: what is kept is damaged.`] };
  }
  if (typeof found !== "object" || found === null) return { levels: USUAL_LEVELS, faults: ["How seldom a part may run out cannot be read, so the usual levels count: it is no list of levels."] };
  const given = found as Record<string, unknown>, wrong = CLASSES.filter((name) => !good(given[name]));
  return {
    levels: Object.fromEntries(CLASSES.map((name) => [name, good(given[name]) ? given[name] : USUAL_LEVELS[name]])) as unknown as ServiceLevels,
    faults: wrong.map((name) => `How seldom a part of class ${name} may run out was kept as ${saidInText(given[name])}, which cannot be; the usual ${100 * USUAL_LEVELS[name]} % counts.`),
  };
}

/** @throws {RangeError} unless each level lies between 0.5 and 0.999 */
export function serviceLevelsText(levels: ServiceLevels): string {
  const wrong = CLASSES.find((name) => !good(levels[name]));
  if (wrong) throw new RangeError(`serviceLevelsText: the level of ${wrong} must lie between ${LEAST} and ${MOST}, got ${levels[wrong]}`);
  return JSON.stringify(levels);
}
