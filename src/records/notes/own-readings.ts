import { actions, families, positions } from "../vocabulary-tables.ts";
import type { Action } from "../vocabulary-tables.ts";
import { phraseWords } from "./words.ts";

/** What words of a note say: of which part (a position, or a family after `?`), and what was done; null where they do not say. */
export interface ReadAs { readonly place: string; readonly action: Action | null }

/** What the owner said of a reading that was not sure. */
export interface OwnReading {
  /** The words, as they stood in the first note that was asked about. */
  readonly wording: string;
  readonly read_as: ReadAs;
  /** Null: they are no finding. */
  readonly means: ReadAs | null;
}

/** Longer stretches are no wording that comes again; they are not asked. */
export const LONGEST_WORDING = 240;

/** Words are the same wording whatever their case, signs, numbers and endings. */
export const wordingKey = (wording: string, { place, action }: ReadAs): string =>
  `${phraseWords(wording).filter((word) => !/^x?\d/.test(word)).join(" ")}\n${place} ${action ?? ""}`;

const places = new Set([...positions.map((row) => row.position), ...families.map(({ family }) => `?${family}`)]), done = new Set<string>(actions.map((row) => row.action));

function isReadAs(value: unknown): value is ReadAs {
  if (typeof value !== "object" || value === null) return false;
  const { place, action } = value as Record<string, unknown>;
  return typeof place === "string" && places.has(place) && (action === null || (typeof action === "string" && done.has(action)));
}

/** What is wrong with a line of what was said of notes, in the owner's words; null when it can be used. */
export function readingFault(line: unknown): string | null {
  if (typeof line !== "object" || line === null) return "is not a line of the spelling book";
  const { wording, read_as, means } = line as Record<string, unknown>;
  if (typeof wording !== "string" || phraseWords(wording).length === 0) return "has no words of a note";
  if (wording.length > LONGEST_WORDING) return `is longer than ${LONGEST_WORDING} letters`;
  if (!isReadAs(read_as)) return "does not say what its words were read as";
  return means === null || isReadAs(means) ? null : "must mean a part we know and what was done to it, or nothing";
}

const keyOf = ({ wording, read_as }: OwnReading) => wordingKey(wording, read_as);

/** The answers by their keys; of two for the same wording the later holds. */
export const readingsByKey = (readings: readonly OwnReading[]): ReadonlyMap<string, OwnReading> => new Map(readings.map((one) => [keyOf(one), one]));

/** The answers with one more: it takes the place of one for the same wording. */
export const withReading = (readings: readonly OwnReading[], one: OwnReading): OwnReading[] => [...withoutReading(readings, one), one];

/** The answers without the one for this wording. */
export const withoutReading = (readings: readonly OwnReading[], one: OwnReading): OwnReading[] => readings.filter((had) => keyOf(had) !== keyOf(one));
