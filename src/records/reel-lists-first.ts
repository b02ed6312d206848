import { headBytes } from "./formats/decoded-text.ts";
import { kindOf } from "./formats/file-kind.ts";
import { openSheets } from "./formats/open-sheets.ts";
import type { NamedFile } from "./formats/sheet.ts";
import { Unreadable } from "./formats/unreadable.ts";
import { layoutOf } from "./reading/headings.ts";
import { knowsHeading } from "./reading/sheet-way.ts";

/** Only text files are looked at: a list of reels is small and plain, and opening a workbook twice is not. */
async function isReelList(file: NamedFile, signal: AbortSignal): Promise<boolean> {
  try {
    if (file.blob.size === 0 || kindOf(await headBytes(file.blob, signal)) !== "text") return false;
    const { sheets: [sheet] } = await openSheets(file, { signal, onBytes: () => undefined, isKnownHeading: knowsHeading(null) });
    const [first] = sheet ? await sheet.head(1) : [], plans = first ? layoutOf(first.cells, file.name, null).plans : [];
    return plans.length === 1 && plans[0]?.table.name === "models";
  } catch (error) {
    // What cannot be opened is told when it is read.
    if (error instanceof Unreadable) return false;
    throw error;
  }
}

/**
 * The same files, the shop's lists of reels before all others: maker and model in other sheets are told apart by them, whatever
 * the order in which the files were given.
 */
export async function reelListsFirst<Given extends { readonly file: NamedFile }>(files: readonly Given[], signal: AbortSignal): Promise<Given[]> {
  if (files.length < 2) return [...files];
  const is_list = await Promise.all(files.map(({ file }) => isReelList(file, signal)));
  return [...files.filter((_, at) => is_list[at]), ...files.filter((_, at) => !is_list[at])];
}
