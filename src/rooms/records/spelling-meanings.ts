import type { Meaning, OwnSpelling } from "../../records/notes/own-spellings.ts";
import { actions, modes, position, positionNamed, positions } from "../../records/vocabulary.ts";

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
