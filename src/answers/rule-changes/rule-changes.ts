import { isDay } from "../days.ts";
import { saidInText } from "../wording.ts";

/** A change of habit the owner dates: from that day on counts mean something else. */
export interface RuleChange {
  /** First day of the new habit, `YYYY-MM-DD`. */
  readonly from: string;
  /** Position it touches; null: all of them. */
  readonly position: string | null;
  readonly text: string;
}

/** Name of the ledger's setting that keeps the changes, as JSON. */
export const RULE_CHANGES_SETTING = "rule changes";

const LONGEST = 200;

function changed(one: unknown): RuleChange | string {
  if (typeof one !== "object" || one === null) return "a change is not written as one";
  const { from, position, text } = one as Record<string, unknown>;
  if (typeof from !== "string" || !isDay(from)) return `its day must be written YYYY-MM-DD, got ${saidInText(from)}`;
  if (position !== null && (typeof position !== "string" || position === "")) return `the part of ${from} is not a part`;
  if (typeof text !== "string" || text.trim() === "" || text.length > LONGEST) return `the words of ${from} must be 1 to ${LONGEST} letters`;
  return { from, position, text: text.trim() };
}

const inOrder = (a: RuleChange, b: RuleChange) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.text < b.text ? -1 : a.text > b.text ? 1 : 0);

/**
 * The changes as they were kept; what cannot be read is left out and named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 * @returns oldest first, with one plain sentence for each that was left out
 */
export function readRuleChanges(kept: string | null): { changes: readonly RuleChange[]; faults: readonly string[] } {
  if (kept === null || kept === "") return { changes: [], faults: [] };
  let list: unknown;
  try {
    list = JSON.parse(kept);
  } catch {
    return { changes: [], faults: [`The list of rule changes cannot be read: what is kept is damaged.`] };
  }
  if (!Array.isArray(list)) return { changes: [], faults: ["The list of rule changes cannot be read: it is not a list."] };
  const read = list.map(changed);
  return {
    changes: read.filter((one) => typeof one !== "string").sort(inOrder),
    faults: read.flatMap((one) => (typeof one === "string" ? [`A rule change was left out: ${one}.`] : [])),
  };
}

/**
 * The changes as text for the ledger's setting.
 *
 * @throws {RangeError} if one of them has no real day, no words, or an empty part
 */
export function ruleChangesText(changes: readonly RuleChange[]): string {
  const checked = changes.map((one) => {
    const read = changed(one);
    if (typeof read === "string") throw new RangeError(`ruleChangesText: ${read}`);
    return read;
  });
  return JSON.stringify(checked.sort(inOrder));
}

/** The changes that touch a position (null: every change), oldest first. */
export function ruleChangesOf(changes: readonly RuleChange[], position: string | null): readonly RuleChange[] {
  return changes.filter((one) => position === null || one.position === null || one.position === position);
}
