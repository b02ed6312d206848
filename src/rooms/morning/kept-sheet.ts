import type { Item, Part } from "./sheet-part.ts";

/** A morning sheet as it stood: on which day of the reader's, and what it said. */
export interface KeptSheet { readonly day: string; readonly lead: string; readonly parts: readonly Part[] }

/** Shape of what is kept; any other is not shown. */
const VERSION = 1;

const isObject = (one: unknown): one is Record<string, unknown> => typeof one === "object" && one !== null && !Array.isArray(one);
const areTexts = (one: Record<string, unknown>, names: readonly string[]) => names.every((name) => typeof one[name] === "string");
/** A link leads to a room of ours or nowhere. */
const leadsHome = (one: Record<string, unknown>) => typeof one["href"] === "string" && one["href"].startsWith("#/");
const isItem = (one: unknown): one is Item => isObject(one) && areTexts(one, ["before", "figure", "after", "why"]) && leadsHome(one);
const isPart = (one: unknown): one is Part => isObject(one) && areTexts(one, ["title", "nothing", "changed"]) && typeof one["to_do"] === "boolean"
  && Array.isArray(one["items"]) && one["items"].every(isItem) && isObject(one["more"]) && areTexts(one["more"], ["words"]) && leadsHome(one["more"]);

export const keptSheetText = (sheet: KeptSheet): string => JSON.stringify({ version: VERSION, ...sheet });

/** The sheet that was kept; null for none, and for one that cannot be read: it is made anew in a moment. */
export function readKeptSheet(text: string | null): KeptSheet | null {
  if (text === null) return null;
  try {
    const read: unknown = JSON.parse(text);
    if (!isObject(read) || read["version"] !== VERSION || !areTexts(read, ["day", "lead"]) || !Array.isArray(read["parts"]) || !read["parts"].every(isPart)) return null;
    return { day: read["day"] as string, lead: read["lead"] as string, parts: read["parts"] as Part[] };
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
