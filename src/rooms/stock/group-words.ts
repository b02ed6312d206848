import type { HandGroup } from "../../answers/interchange/hand-groups.ts";
import type { RestockLine } from "../../answers/stock/restock-line.ts";

/** Lines that stand for more than one number, by name. */
export function groupsOfSeveral(lines: readonly RestockLine[]): readonly RestockLine[] {
  return lines.filter((line) => line.part_nos.length > 1).sort((a, b) => (a.name ?? a.interchange).localeCompare(b.name ?? b.interchange, undefined, { numeric: true }));
}

/** Every number that can be joined with another, by number. */
export function numbersOf(lines: readonly RestockLine[]): readonly { value: string; label: string }[] {
  return lines.filter((line) => line.status !== "refused").flatMap((line) => line.part_nos.map((value) => ({ value, label: line.name === null ? value : `${value}, ${line.name}` })))
    .sort((a, b) => a.value.localeCompare(b.value, undefined, { numeric: true }));
}

/** What was settled, as a sentence. */
export function handWords(group: HandGroup): string {
  if (group.kind === "size") return `${group.part_no} is ${group.size}.`;
  return group.kind === "join" ? `${group.part_nos.join(" and ")} are the same part.` : `${group.part_nos.join(", ")} stands by itself.`;
}
