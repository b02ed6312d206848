import { isDay } from "../days.ts";
import { saidInText } from "../wording.ts";

/** Days on which the shop, or one person of it, is away; both ends are away too. */
export interface Closure {
  readonly from: string;
  readonly to: string;
  /** Null: the whole shop is closed. Else the person, as named in the bench hours: only their hours are missing. */
  readonly who: string | null;
  readonly text: string;
}

/** Name of the ledger's setting that keeps the closures, as JSON. */
export const BENCH_CALENDAR_SETTING = "bench calendar";

const LONGEST = 120;

function closure(one: unknown): Closure | string {
  if (typeof one !== "object" || one === null) return "an entry is not written as one";
  const { from, to, who, text } = one as Record<string, unknown>;
  if (typeof from !== "string" || !isDay(from)) return `its first day must be written YYYY-MM-DD, got ${saidInText(from)}`;
  if (typeof to !== "string" || !isDay(to)) return `its last day must be written YYYY-MM-DD, got ${saidInText(to)}`;
  if (to < from) return `its last day ${to} is before its first, ${from}`;
  if (who !== null && (typeof who !== "string" || who === "")) return `the person of ${from} is not a name`;
  if (typeof text !== "string" || text.length > LONGEST) return `the words of ${from} must be at most ${LONGEST} letters`;
  return { from, to, who, text: text.trim() };
}

const inOrder = (a: Closure, b: Closure) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.to < b.to ? -1 : a.to > b.to ? 1 : 0);

/**
 * The closures as they were kept; what cannot be read is left out and named.
 *
 * @param kept the ledger's setting, null when nothing was kept yet
 * @returns soonest first, with one plain sentence for each that was left out
 */
export function readClosures(kept: string | null): { closures: readonly Closure[]; faults: readonly string[] } {
  if (kept === null || kept === "") return { closures: [], faults: [] };
  let list: unknown;
  try {
    list = JSON.parse(kept);
  } catch {
    return { closures: [], faults: [`The list of closed days cannot be read: what is kept is damaged.`] };
  }
  if (!Array.isArray(list)) return { closures: [], faults: ["The list of closed days cannot be read: it is not a list."] };
  const read = list.map(closure);
  return {
    closures: read.filter((one) => typeof one !== "string").sort(inOrder),
    faults: read.flatMap((one) => (typeof one === "string" ? [`A closed time was left out: ${one}.`] : [])),
  };
}

/**
 * The closures as text for the ledger's setting; null when there are none.
 *
 * @throws {RangeError} if one of them has no real days, ends before it begins, or names nobody
 */
export function closuresText(closures: readonly Closure[]): string | null {
  const checked = closures.map((one) => {
    const read = closure(one);
    if (typeof read === "string") throw new RangeError(`closuresText: ${read}`);
    return read;
  });
  return checked.length === 0 ? null : JSON.stringify(checked.sort(inOrder));
}

/** Whether the whole shop is closed on a day. */
export const shopClosed = (closures: readonly Closure[], day: string): boolean => closures.some(({ from, to, who }) => who === null && from <= day && day <= to);

/** Those who are away on a day. */
export const awayOn = (closures: readonly Closure[], day: string): readonly string[] => closures.flatMap(({ from, to, who }) => (who !== null && from <= day && day <= to ? [who] : []));
