import { jsonOrNull } from "./json-or-null.ts";
import { readingFault, withReading, type OwnReading } from "./own-readings.ts";
import { spellingFault, withSpelling, type Meaning, type OwnSpelling } from "./own-spellings.ts";

/** The ledger's setting in which the shop's spelling book is kept; a backup carries it along. */
export const SPELLING_SETTING = "spelling book";

/** What a kept spelling book holds: the lines that can be used, and in the owner's words what is wrong with the others. */
export interface ReadSpellings { readonly entries: readonly OwnSpelling[]; readonly readings: readonly OwnReading[]; readonly faults: readonly string[] }

/** What a line means, without whatever else stands in it. */
function meaning(entry: OwnSpelling): Meaning {
  if ("position" in entry) return { position: entry.position };
  if ("mode" in entry) return { mode: entry.mode };
  return "action" in entry ? { action: entry.action } : { ignored: true };
}
const plain = (entry: OwnSpelling): OwnSpelling => ({ spelling: entry.spelling, reel_kind: entry.reel_kind, ...meaning(entry) });

const plainReading = ({ wording, read_as, means }: OwnReading): OwnReading => ({ wording, read_as, means });

/** The lines as JSON text, one a line, to be kept and read by people. */
export function spellingsText(entries: readonly OwnSpelling[], readings: readonly OwnReading[] = []): string {
  const lines = [...entries.map(plain), ...readings.map(plainReading)].map((line) => `  ${JSON.stringify(line)}`);
  return lines.length === 0 ? "[]" : `[\n${lines.join(",\n")}\n]`;
}

const isReading = (line: unknown) => typeof line === "object" && line !== null && "wording" in line;

/**
 * The spelling book from its text. Nothing kept is an empty book: none ships with the app. Lines that cannot be used are left
 * out and told; of two lines for the same spelling and kind of reel the later holds.
 */
export function spellingsFrom(text: string | null): ReadSpellings {
  if (text === null || text.trim() === "") return { entries: [], readings: [], faults: [] };
  const lines = jsonOrNull(text);
  if (!Array.isArray(lines)) return { entries: [], readings: [], faults: ["The spelling book is damaged and cannot be read."] };
  let entries: OwnSpelling[] = [], readings: OwnReading[] = [];
  const faults: string[] = [];
  lines.forEach((line: unknown, index) => {
    const is_reading = isReading(line), fault = is_reading ? readingFault(line) : spellingFault(line);
    if (fault === null && is_reading) readings = withReading(readings, plainReading(line as OwnReading));
    else if (fault === null) entries = withSpelling(entries, plain(line as OwnSpelling));
    else faults.push(`Line ${index + 1} of the spelling book ${fault}.`);
  });
  return { entries, readings, faults };
}
