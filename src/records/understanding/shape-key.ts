import type { Sheet } from "../formats/sheet.ts";
import { plainHeading } from "../reading/heading-words.ts";
import { headSize, isKnownToAny } from "./sheet-plan.ts";
import { tableStart } from "./table-start.ts";

/**
 * What files of one shape have in common: their sheets' headings, in order, whatever the rows and the file's name are.
 *
 * A workbook with a sheet for each year is of another shape when a sheet is added; its sheets are then matched by name.
 */
export async function shapeKey(sheets: readonly Sheet[]): Promise<string> {
  const parts: string[] = [];
  for (const sheet of sheets) {
    const { headings } = tableStart(await sheet.head(headSize), sheet.has_headings, isKnownToAny);
    parts.push(headings.map(plainHeading).join(","));
  }
  return parts.join(" | ");
}

/** Name of the ledger's setting that keeps the answers for files of a shape. */
export const settingName = (shape_key: string): string => `answers for a sheet like: ${shape_key}`;

/** The shape a setting's name is for; null when it keeps something else. */
export function shapeOfSetting(name: string): string | null {
  const start = settingName("");
  return name.startsWith(start) ? name.slice(start.length) : null;
}
