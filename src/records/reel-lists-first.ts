import { headBytes } from "./formats/decoded-text.ts";
import { kindOf } from "./formats/file-kind.ts";
import { openSheets } from "./formats/open-sheets.ts";
import type { NamedFile } from "./formats/sheet.ts";
import { Unreadable } from "./formats/unreadable.ts";
import { kindOfSheet, listsFirst, type SheetKind } from "./reading/list-of-reels.ts";
import { knowsHeading } from "./reading/sheet-way.ts";

/** A list of reels is small; a larger file that is no text is not opened twice. */
const LARGEST_LIST = 256 * 1024;

async function kindOfFile(file: NamedFile, signal: AbortSignal): Promise<SheetKind> {
  try {
    if (file.blob.size === 0 || (file.blob.size > LARGEST_LIST && kindOf(await headBytes(file.blob, signal)) !== "text")) return "other";
    const { sheets } = await openSheets(file, { signal, onBytes: () => undefined, isKnownHeading: knowsHeading(null) }), [sheet] = sheets;
    return sheet && sheets.length === 1 ? await kindOfSheet(sheet, file.name) : "other";
  } catch (error) {
    // What cannot be opened is told when it is read.
    if (error instanceof Unreadable) return "other";
    throw error;
  }
}

/** The same files, the shop's lists of reels before all others (`listsFirst`). */
export async function reelListsFirst<Given extends { readonly file: NamedFile }>(files: readonly Given[], signal: AbortSignal): Promise<Given[]> {
  if (files.length < 2) return [...files];
  return listsFirst(files, await Promise.all(files.map(({ file }) => kindOfFile(file, signal))));
}
