import type { Item } from "./item.ts";

const GROUPING: ReadonlySet<string> = new Set(["and", "&", "+", "/", "w/"]);

/** "Bearing seized to the pinion. Replaced both.": where one part was named and another in passing, both are meant. */
export function withPassing(items: readonly Item[], next: readonly Item[] | undefined): readonly Item[] {
  const both = [...items, ...(next ?? []).slice(0, 1)].some((one) => one.parts.length === 0 && one.told.some((mark) => mark.say === "both"));
  const asides = items.flatMap((one) => one.passed), parts = items.flatMap((one) => one.parts);
  if (!both || asides.length !== 1 || parts.length !== 1) return items;
  return items.map((one) => (one.parts.length === 1 && one.passed.length === 1
    ? { ...one, parts: [...one.parts, ...one.passed].sort((a, b) => a.from - b.from) } : one));
}

const together = (before: Item, one: Item): Item => ({ ...one, from: before.from, joint: before.joint, told: [...before.told, ...one.told],
  unknown: before.unknown + one.unknown, strangers: before.strangers + one.strangers, other_subject: before.other_subject || one.other_subject });

/** "Flushed & relubed: mains, LRB": things done one after the other, before or behind the parts, are done to the same parts. */
export function runTogether(items: readonly Item[]): Item[] {
  const out: Item[] = [];
  for (const one of items) {
    const before = out.at(-1), run = before && before.parts.length === 0 && one.parts.length === 0 && GROUPING.has(one.joint) && before.told.length > 0
      && one.told.length > 0 && [...before.told, ...one.told].every((mark) => mark.kind === "action");
    if (run) out[out.length - 1] = together(before, one);
    else out.push(one);
  }
  return out;
}
