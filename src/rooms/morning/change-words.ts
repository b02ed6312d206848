import { namesChanged, type Look, type NamedThing } from "../../answers/morning/last-look.ts";
import { count, longDay } from "../../ui/format.ts";

const MOST_NAMED = 3;

function named(names: readonly string[], locale?: string): string {
  const rest = names.length - MOST_NAMED;
  return rest > 0 ? `${names.slice(0, MOST_NAMED).join(", ")} and ${count(rest, "other", "others", locale)}` : names.join(", ");
}

/**
 * What came and what went since the last look, in words; "" where nothing did or there was no look.
 *
 * @example
 * listChanges([{ key: "a", name: "Seal" }], [{ key: "b", name: "Clutch" }], "no longer to order"); // => "new: Clutch; no longer to order: Seal."
 */
export function listChanges(before: readonly NamedThing[] | null, now: readonly NamedThing[], gone_words: string, locale?: string): string {
  if (before === null) return "";
  const { come, gone } = namesChanged(before, now);
  const told = [come.length === 0 ? "" : `new: ${named(come, locale)}`, gone.length === 0 ? "" : `${gone_words}: ${named(gone, locale)}`].filter((words) => words !== "").join("; ");
  return told === "" ? "" : `${told}.`;
}

/** A look's day in words, on the day `today`. */
export function lookWords(look: Pick<Look, "day">, today: string, locale?: string): string {
  return look.day === today ? "your look earlier today" : longDay(look.day, locale);
}

/**
 * What the sheet's changes are told against.
 *
 * @param whole whether everything on the sheet stands already
 */
export function sinceSentence(before: Pick<Look, "day"> | null, today: string, { whole, changed }: { whole: boolean; changed: boolean }, locale?: string): string {
  if (before === null) return "From the next day on, or when records come in, this sheet says what changed.";
  const since = `since ${lookWords(before, today, locale)}`;
  return whole && !changed ? `Nothing has changed ${since}.` : `What changed ${since} is marked.`;
}
