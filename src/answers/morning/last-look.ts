import { isDay } from "../days.ts";

/** Something on the sheet by a key that stays the same, and its name for the owner. */
export interface NamedThing { readonly key: string; readonly name: string }

/** What is kept of a morning sheet, to say next time what changed. */
export interface LookFigures {
  /** Parts to order, by interchange group. */
  readonly order: readonly NamedThing[];
  /** Parts, models and lots that stand out. */
  readonly watch: readonly NamedThing[];
  /** Hours of work that waited; null where they could not be told. */
  readonly backlog_hours: number | null;
  /** Rows, numbers and names that waited for an answer. */
  readonly to_answer: number;
}

/** One look at the sheet: on which day of the reader's, over which records. */
export interface Look { readonly day: string; readonly records: string; readonly figures: LookFigures }

/** The newest look, and the one its changes are told against; null before there was a second. */
export interface KeptLooks { readonly latest: Look; readonly before: Look | null }

/** Name of the ledger's setting that keeps them, as JSON. */
export const MORNING_LOOKS_SETTING = "looks at the morning sheet";
/** Shape of what is kept; a newer one is not understood. */
const VERSION = 1;

const isObject = (one: unknown): one is Record<string, unknown> => typeof one === "object" && one !== null && !Array.isArray(one);
const isCount = (one: unknown): one is number => typeof one === "number" && Number.isFinite(one) && one >= 0;
const isThing = (one: unknown): one is NamedThing => isObject(one) && typeof one.key === "string" && typeof one.name === "string";
const areThings = (list: unknown): list is readonly NamedThing[] => Array.isArray(list) && list.every(isThing);

/** Figures of a look as they were kept. @throws {RangeError} unless they are figures */
export function lookFigures(one: unknown): LookFigures {
  if (!isObject(one)) throw new RangeError("a look is not written as one");
  const { order, watch, backlog_hours, to_answer } = one;
  if (!areThings(order) || !areThings(watch)) throw new RangeError("what stood on it is not a list of names");
  if (!(backlog_hours === null || isCount(backlog_hours)) || !isCount(to_answer)) throw new RangeError("its counts are not counts");
  return { order, watch, backlog_hours, to_answer };
}

function lookOf(one: unknown): Look {
  if (!isObject(one) || !isObject(one.figures)) throw new RangeError("a look is not written as one");
  const { day, records, figures } = one;
  if (typeof day !== "string" || !isDay(day)) throw new RangeError("its day is not a day");
  if (typeof records !== "string") throw new RangeError("it does not say which records it was over");
  return { day, records, figures: lookFigures(figures) };
}

/**
 * The looks as they were kept; what cannot be read is left aside and said.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 */
export function readKeptLooks(kept: string | null): { looks: KeptLooks | null; fault: string | null } {
  if (kept === null || kept === "") return { looks: null, fault: null };
  try {
    const read: unknown = JSON.parse(kept);
    if (!isObject(read)) throw new RangeError("they are not written as looks");
    if (read.version !== VERSION) throw new RangeError(`they are of version ${String(read.version)}, this app knows version ${VERSION}`);
    return { looks: { latest: lookOf(read.latest), before: read.before === null ? null : lookOf(read.before) }, fault: null };
  } catch (error) {
    return { looks: null, fault: `What this sheet said last time cannot be read (${error instanceof Error ? error.message : String(error)}), so no change is told today.` };
  }
}

/** The looks as text for the ledger's setting. */
export const keptLooksText = ({ latest, before }: KeptLooks): string => JSON.stringify({ version: VERSION, latest, before });

const sameMorning = (look: Look, now: Pick<Look, "day" | "records">): boolean => look.day === now.day && look.records === now.records;

/** The look that today's changes are told against: it stays for the day unless records are brought in, so that opening the sheet again says the same. */
export function lookToCompare(looks: KeptLooks | null, now: Pick<Look, "day" | "records">): Look | null {
  if (looks === null) return null;
  return sameMorning(looks.latest, now) ? looks.before : looks.latest;
}

/** What to keep once the whole sheet stands: the newest state of the same morning takes the place of its earlier ones. */
export const looksAfter = (looks: KeptLooks | null, look: Look): KeptLooks => ({ latest: look, before: lookToCompare(looks, look) });

/** Which records a look was over. Tickets finished at the bench change them all day long and are left out. */
export function recordsMark(batches: readonly { readonly id: string; readonly origin: string }[]): string {
  const brought = batches.filter(({ origin }) => origin !== "bench");
  return `${brought.length} ${brought.at(-1)?.id ?? ""}`.trim();
}

/** Names that are there now and were not, and that were and are not. */
export function namesChanged(before: readonly NamedThing[], now: readonly NamedThing[]): { come: readonly string[]; gone: readonly string[] } {
  const without = (all: readonly NamedThing[], others: readonly NamedThing[]) => {
    const keys = new Set(others.map(({ key }) => key));
    return all.filter(({ key }) => !keys.has(key)).map(({ name }) => name);
  };
  return { come: without(now, before), gone: without(before, now) };
}
