import { lookFigures, type LookFigures } from "../../answers/morning/last-look.ts";
import { crc32 } from "../../records/formats/crc32.ts";
import { LATER, type LaterName } from "./later-parts.ts";
import type { Item, Part } from "./sheet-part.ts";

/** A fact at the head of the sheet. */
export interface Fact { readonly label: string; readonly value: string }

/** A morning sheet as it stood, on which day of the reader's, and what it was worked out from. */
export interface KeptSheet {
  readonly day: string;
  /** `sheetKey` of what it was worked out from; null where that is not known. */
  readonly key: string | null;
  readonly lead: string;
  readonly facts: readonly Fact[];
  /** Parts that stand first, and those that come in later. */
  readonly first: readonly Part[];
  readonly later: readonly { readonly name: LaterName; readonly part: Part }[];
  readonly figures: LookFigures;
}

/** Shape of what is kept; any other is not shown. */
const VERSION = 2;

const isObject = (one: unknown): one is Record<string, unknown> => typeof one === "object" && one !== null && !Array.isArray(one);
const areTexts = (one: Record<string, unknown>, names: readonly string[]) => names.every((name) => typeof one[name] === "string");
const every = <T>(list: unknown, is: (one: unknown) => one is T): list is readonly T[] => Array.isArray(list) && list.every(is);
/** A link leads to a room of ours or nowhere. */
const leadsHome = (one: Record<string, unknown>) => typeof one["href"] === "string" && one["href"].startsWith("#/");
const isItem = (one: unknown): one is Item => isObject(one) && areTexts(one, ["before", "figure", "after", "why"]) && leadsHome(one);
const isPart = (one: unknown): one is Part => isObject(one) && areTexts(one, ["title", "nothing", "changed"]) && typeof one["to_do"] === "boolean"
  && every(one["items"], isItem) && isObject(one["more"]) && areTexts(one["more"], ["words"]) && leadsHome(one["more"]);
const isFact = (one: unknown): one is Fact => isObject(one) && areTexts(one, ["label", "value"]);
const isLater = (one: unknown): one is KeptSheet["later"][number] => isObject(one) && LATER.some(({ name }) => name === one["name"]) && isPart(one["part"]);

/** A text behind its check value, so that none is read that has changed since. */
const CHECK_LENGTH = 8, checked = (text: string): string => `${crc32(new TextEncoder().encode(text)).toString(16).padStart(CHECK_LENGTH, "0")} ${text}`;

export const keptSheetText = (sheet: KeptSheet): string => checked(JSON.stringify({ version: VERSION, ...sheet }));

function sheetOf(read: unknown): KeptSheet | null {
  if (!isObject(read) || read["version"] !== VERSION || !areTexts(read, ["day", "lead"])) return null;
  const { day, lead, key, facts, first, later, figures } = read;
  if (!(key === null || typeof key === "string") || !every(facts, isFact) || !every(first, isPart) || !every(later, isLater)) return null;
  return { day: day as string, lead: lead as string, key, facts, first, later, figures: lookFigures(figures) };
}

/** The sheet that was kept; null for none, and for one that has changed since or cannot be read: it is made anew in a moment. */
export function readKeptSheet(kept: string | null): KeptSheet | null {
  const text = kept?.slice(CHECK_LENGTH + 1);
  if (text === undefined || checked(text) !== kept) return null;
  try {
    return sheetOf(JSON.parse(text));
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof RangeError) return null;
    throw error;
  }
}

/** All its parts, in the order of the sheet. */
export const partsOf = ({ first, later }: Pick<KeptSheet, "first" | "later">): readonly Part[] => [...first, ...later.map(({ part }) => part)];

/** The same without what no key tells of: tickets at the bench are no records, so what was kept of them says nothing of now. */
export const ofRecords = <Sheet extends Pick<KeptSheet, "later">>(sheet: Sheet): Sheet => ({ ...sheet, later: sheet.later.filter(({ name }) => name !== "tickets") });

/** Whether working the sheet out again would give the same; a key that is not known is no other's. */
export const isTodays = (kept: KeptSheet | null, key: string | null): kept is KeptSheet => kept !== null && key !== null && kept.key === key;
