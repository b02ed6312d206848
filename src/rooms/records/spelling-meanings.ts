import type { OwnReading, ReadAs } from "../../records/notes/own-readings.ts";
import type { Meaning, OwnSpelling } from "../../records/notes/own-spellings.ts";
import { actions, families, modes, position, positionNamed, positions } from "../../records/vocabulary.ts";

/** What a word of the bench can be said to mean, as the list on the screen names it. */
export interface NamedMeaning {
  readonly words: string;
  readonly meaning: Meaning;
}

export const NOTHING = "means nothing";

const done = [...new Set(actions.map(({ action }) => action))];

/** All parts by name, then what can be done, then what can be wrong. */
export const MEANINGS: readonly NamedMeaning[] = [
  { words: NOTHING, meaning: { ignored: true } },
  ...positions.map(({ position: code, name }) => ({ words: name, meaning: { position: code } })).sort((a, b) => a.words.localeCompare(b.words)),
  ...done.map((action) => ({ words: `work: ${action}`, meaning: { action } })),
  ...modes.map(({ mode }) => ({ words: `fault: ${mode}`, meaning: { mode } })),
];

const plain = (text: string) => text.trim().toLowerCase();
const byWords = new Map(MEANINGS.map(({ words, meaning }) => [plain(words), meaning]));

/** The meaning the owner typed or chose: a name of the list, or any spelling of a part that is known; null for anything else. */
export function meaningOf(typed: string): Meaning | null {
  const text = plain(typed), listed = byWords.get(text) ?? byWords.get(`work: ${text}`) ?? byWords.get(`fault: ${text}`);
  if (listed) return listed;
  const named = text === "" ? null : positionNamed(text);
  return named === null ? null : { position: named };
}

/** What a line of the spelling book means, in the words of the list. */
export function meaningWords(entry: Meaning | OwnSpelling): string {
  if ("position" in entry) return position(entry.position).name;
  if ("mode" in entry) return `fault: ${entry.mode}`;
  return "action" in entry ? `work: ${entry.action}` : NOTHING;
}

export const NOT_SAID = "seen, no work";
const UNPLACED = ", place not named";

/** What can be done to a part, as the list on the screen names it. */
export const WORK: readonly string[] = [...done, NOT_SAID];

/** A part as it is named in the list: a position, or a family whose place is not named. */
export const partWords = (place: string): string => (place.startsWith("?") ? `${place.slice(1)}${UNPLACED}` : position(place).name);

const bareParts = families.map(({ family }) => ({ place: `?${family}`, words: `${family}${UNPLACED}` }));
/** All parts by name, then the families. */
export const PARTS: readonly string[] = [...positions.map(({ name }) => name).sort((a, b) => a.localeCompare(b)), ...bareParts.map(({ words }) => words)];

/** The part the owner typed or chose, as notes are read: a position or `?family`; null for anything else. */
export function partNamed(typed: string): string | null {
  const text = plain(typed), meaning = byWords.get(text);
  if (meaning && "position" in meaning) return meaning.position;
  return bareParts.find(({ words }) => words === text)?.place ?? (text === "" ? null : positionNamed(text));
}

/** A part and one of {@link WORK} as a reading. */
export const readAsSaid = (place: string, work: string): ReadAs => ({ place, action: done.find((action) => action === work) ?? null });

/** `replaced: line roller bearing`. */
export const readAsWords = ({ place, action }: ReadAs): string => `${action ?? NOT_SAID}: ${partWords(place).toLowerCase()}`;

/** What the owner made of a reading. */
export const answerWords = ({ means }: OwnReading): string => (means === null ? "left out" : readAsWords(means));
