interface Replacing {
  readonly part_no: string;
  readonly replaces: string | null;
}
type Links = ReadonlyMap<string, readonly string[]>;

const older = (part: Replacing): string[] =>
  (part.replaces ?? "").split(";").map((number) => number.trim()).filter((number) => number !== "" && number !== part.part_no);

/** Numbers that a newer one replaces: they are ended. */
export function endedNumbers(parts: readonly Replacing[]): ReadonlySet<string> {
  return new Set(parts.flatMap(older));
}

function links(pairs: readonly (readonly [string, string])[]): Links {
  const found = new Map<string, string[]>();
  for (const [from, to] of pairs) found.set(from, [...(found.get(from) ?? []), to]);
  return found;
}

/** Everything that can be reached from `starts`, nearest first, the higher number first among equally near ones. */
function reached(starts: readonly string[], next: Links): string[] {
  const seen = new Set(starts);
  let front = [...starts];
  while (front.length > 0) {
    front = [...new Set(front.flatMap((number) => next.get(number) ?? []))].filter((number) => !seen.has(number)).sort().reverse();
    front.forEach((number) => seen.add(number));
  }
  return [...seen];
}

/**
 * Part numbers joined by `replaces`, each chain newest first; a number without a relation is a chain of its own.
 *
 * Two newer numbers for one old one are one chain. A circle has no newest: then the highest number leads, so that the
 * answer does not depend on the order of the rows.
 */
export function replacementChains(parts: readonly Replacing[]): string[][] {
  const pairs = parts.flatMap((part) => older(part).map((old) => [part.part_no, old] as const));
  const olderOf = links(pairs), both = links(pairs.flatMap(([one, other]) => [[one, other], [other, one]] as const));
  const ended = endedNumbers(parts), placed = new Set<string>();
  const numbers = [...new Set([...parts.map((part) => part.part_no), ...ended])].sort().reverse();
  return numbers.flatMap((number) => {
    if (placed.has(number)) return [];
    const members = reached([number], both).sort().reverse(), newest = members.filter((member) => !ended.has(member));
    members.forEach((member) => placed.add(member));
    return [reached(newest.length > 0 ? newest : members.slice(0, 1), olderOf)];
  });
}
