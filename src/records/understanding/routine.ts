import { cameInFrom, saysWaterInside, waterSeals } from "../came-in.ts";
import { position } from "../vocabulary.ts";
import type { FixCounts, MadeRecord } from "./row-outcome.ts";

/** Parts that shops change whether worn or not when they service a reel (common practice, no source). */
const FAMILY = "seal";
const CHANGED: ReadonlySet<string> = new Set(["replaced", "wanted"]);
const TAKEN = "a seal changed at a service without a word about a fault was taken as changed as routine";

type Cells = MadeRecord["cells"];

/** A full service, or a reel that came in for planned work: when seals may be changed as a matter of routine. */
export function isService({ job, came_in, complaint = "" }: Cells): boolean {
  return job === "full service" || (came_in || cameInFrom(complaint)) === "planned";
}

/** Replaced, or needed and not there. */
export const isChanged = ({ action = "" }: Cells): boolean => CHANGED.has(action);

/** A word or a grade says what was wrong with the part, or the customer says that water got in where this seal keeps it out. */
export const hasFault = ({ mode, grade, position: place = "" }: Cells, { complaint = "" }: Cells): boolean =>
  Boolean(mode) || Boolean(grade) || (waterSeals.has(place) && saysWaterInside(complaint));

/** Words that name a family alone have no place that could fail. */
export const isSealPlace = (place: string): boolean => !place.startsWith("?") && position(place).family === FAMILY;

/**
 * Records of one ticket, its seals marked as changed as routine where its owner says so of their place and no word of theirs
 * names a fault.
 *
 * @param routine places of which it is said
 */
export function withRoutine(records: readonly MadeRecord[], routine: ReadonlySet<string>, fixes: FixCounts): readonly MadeRecord[] {
  const ticket = routine.size === 0 ? undefined : records.find(({ table }) => table === "tickets");
  if (!ticket || !isService(ticket.cells)) return records;
  return records.map((one) => {
    const { table, cells } = one, place = cells["position"] ?? "";
    if (table !== "findings" || !routine.has(place) || !isChanged(cells) || hasFault(cells, ticket.cells) || cells["routine"] === "yes") return one;
    fixes.add(TAKEN, cells["note"] ?? place, "as routine");
    return { ...one, cells: { ...cells, routine: "yes", rule: `${cells["rule"] ?? ""}, as routine at services` } };
  });
}
