import { saidInText } from "../wording.ts";

/**
 * What the owner settled about which parts are the same: `join`, these numbers are the same thing; `split`, these numbers
 * are a thing of their own, whatever else they were counted with; `size`, how a bearing's size is meant that can be read in two ways.
 */
export type HandGroup =
  | { readonly kind: "join" | "split"; readonly part_nos: readonly string[] }
  | { readonly kind: "size"; readonly part_no: string; readonly size: string };

/** Name of the ledger's setting that keeps them, as JSON, in the order they were settled: the later wins. */
export const HAND_GROUPS_SETTING = "interchange by hand";

const isNumber = (one: unknown): one is string => typeof one === "string" && one.trim() !== "";

function settled(one: unknown): HandGroup | string {
  if (typeof one !== "object" || one === null) return "it is not written as one";
  const { kind, part_nos, part_no, size } = one as Record<string, unknown>;
  if (kind === "size") return isNumber(part_no) && isNumber(size) ? { kind, part_no, size } : "its number or its size is missing";
  if (kind !== "join" && kind !== "split") return `it neither joins nor splits, got ${saidInText(kind)}`;
  const fewest = kind === "join" ? 2 : 1;
  if (!Array.isArray(part_nos) || !part_nos.every(isNumber) || new Set(part_nos).size < fewest) return `it needs at least ${fewest} part numbers`;
  return { kind, part_nos: [...new Set(part_nos)] };
}

/**
 * The groups as they were kept; what cannot be read is left out and named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 */
export function readHandGroups(kept: string | null): { groups: readonly HandGroup[]; faults: readonly string[] } {
  if (kept === null || kept === "") return { groups: [], faults: [] };
  let list: unknown;
  try {
    list = JSON.parse(kept);
  } catch {
    return { groups: [], faults: [`The groups made by hand cannot be read: what is kept is damaged.`] };
  }
  if (!Array.isArray(list)) return { groups: [], faults: ["The groups made by hand cannot be read: they are not a list."] };
  const read = list.map(settled);
  return {
    groups: read.filter((one) => typeof one !== "string"),
    faults: read.flatMap((one) => (typeof one === "string" ? [`A group made by hand was left out: ${one}.`] : [])),
  };
}

/**
 * The groups as text for the ledger's setting.
 *
 * @throws {RangeError} if one of them names too few numbers, or no size
 */
export function handGroupsText(groups: readonly HandGroup[]): string {
  return JSON.stringify(groups.map((one) => {
    const read = settled(one);
    if (typeof read === "string") throw new RangeError(`handGroupsText: a group made by hand is wrong: ${read}`);
    return read;
  }));
}
