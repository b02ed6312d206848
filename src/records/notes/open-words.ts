import { jsonOrNull } from "./json-or-null.ts";
import type { OwnReading } from "./own-readings.ts";
import type { OwnSpelling } from "./own-spellings.ts";

/** What the notes of one import left open: words that nothing was read from, and wordings whose reading was not sure. */
export interface OpenWords { readonly batch: string; readonly words: readonly string[]; readonly readings: readonly string[] }

/** The ledger's setting in which they are kept, as JSON, until they are answered or their import goes. */
export const OPEN_WORDS_SETTING = "words open in notes";

/** Shape of what is kept; a newer one is not understood. */
const VERSION = 1;
/** Of one import; whoever has more has enough to answer. */
const MOST = 500;

const isObject = (one: unknown): one is Record<string, unknown> => typeof one === "object" && one !== null && !Array.isArray(one);
const areWords = (one: unknown): one is string[] => Array.isArray(one) && one.every((word) => typeof word === "string");

/** What is open by import, and in the owner's words what could not be read. */
export function readOpenWords(text: string | null): { open: readonly OpenWords[]; faults: readonly string[] } {
  if (text === null || text === "") return { open: [], faults: [] };
  const read = jsonOrNull(text), damaged = { open: [], faults: ["Which words of your notes wait for an answer cannot be read: what is kept is damaged."] };
  if (!isObject(read) || read["version"] !== VERSION || !Array.isArray(read["imports"])) return damaged;
  const open = read["imports"].flatMap((one: unknown): OpenWords[] =>
    (isObject(one) && typeof one["batch"] === "string" && areWords(one["words"]) && areWords(one["readings"]) ? [{ batch: one["batch"], words: one["words"], readings: one["readings"] }] : []));
  return open.length === read["imports"].length ? { open, faults: [] } : damaged;
}

/** As text for the setting; null when nothing is open. */
export const openWordsText = (open: readonly OpenWords[]): string | null => (open.length === 0 ? null : JSON.stringify({ version: VERSION, imports: open }));

/**
 * What is open once an import came in, or went: its own words join those of the imports that are still there.
 *
 * @param come null when one went
 * @param there the imports that are in the records, the new one among them
 */
export function openAfter(open: readonly OpenWords[], come: OpenWords | null, there: readonly string[]): readonly OpenWords[] {
  const kept = open.filter(({ batch }) => batch !== come?.batch && there.includes(batch));
  return come === null || come.words.length + come.readings.length === 0 ? kept : [...kept, { batch: come.batch, words: come.words.slice(0, MOST), readings: come.readings.slice(0, MOST) }];
}

const plain = (words: string) => words.trim().toLowerCase();

/** How many different words and wordings still wait: of imports that are there, without those in the spelling book. */
export function wordsWaiting(
  open: readonly OpenWords[], { entries, readings }: { readonly entries: readonly OwnSpelling[]; readonly readings: readonly OwnReading[] }, there: readonly string[],
): number {
  const own = open.filter(({ batch }) => there.includes(batch)), known = new Set(entries.map(({ spelling }) => plain(spelling))), settled = new Set(readings.map(({ wording }) => plain(wording)));
  const words = new Set(own.flatMap((one) => one.words.map(plain)).filter((one) => !known.has(one)));
  const wordings = new Set(own.flatMap((one) => one.readings.map(plain)).filter((one) => !settled.has(one)));
  return words.size + wordings.size;
}
