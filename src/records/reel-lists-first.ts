import { headBytes } from "./formats/decoded-text.ts";
import { kindOf } from "./formats/file-kind.ts";
import { openSheets } from "./formats/open-sheets.ts";
import type { NamedFile } from "./formats/sheet.ts";
import { Unreadable } from "./formats/unreadable.ts";
import { layoutOf } from "./reading/headings.ts";
import { knowsHeading } from "./reading/sheet-way.ts";

type Kind = "list of reels" | "other table of ours" | "other";

/** A list of reels is small; a larger file that is no text is not opened twice. */
const LARGEST_LIST = 256 * 1024;

async function kindOfFile(file: NamedFile, signal: AbortSignal): Promise<Kind> {
  try {
    if (file.blob.size === 0 || (file.blob.size > LARGEST_LIST && kindOf(await headBytes(file.blob, signal)) !== "text")) return "other";
    const { sheets } = await openSheets(file, { signal, onBytes: () => undefined, isKnownHeading: knowsHeading(null) });
    if (sheets.length !== 1) return "other";
    const [sheet] = sheets, [first] = sheet ? await sheet.head(1) : [], layout = first ? layoutOf(first.cells, file.name, null) : null;
    if (layout?.plans.length !== 1 || layout.missing.length > 0) return "other";
    return layout.plans[0]?.table.name === "models" ? "list of reels" : layout.left_out.length === 0 ? "other table of ours" : "other";
  } catch (error) {
    // What cannot be opened is told when it is read.
    if (error instanceof Unreadable) return "other";
    throw error;
  }
}

/**
 * The same files, the shop's lists of reels before all others where some are sheets of the shop's own: maker and model in those
 * are told apart by the lists, whatever the order in which the files were given. Our own tables need no list, and stay in order.
 */
export async function reelListsFirst<Given extends { readonly file: NamedFile }>(files: readonly Given[], signal: AbortSignal): Promise<Given[]> {
  if (files.length < 2) return [...files];
  const kinds = await Promise.all(files.map(({ file }) => kindOfFile(file, signal)));
  if (!kinds.includes("other")) return [...files];
  return [...files.filter((_, at) => kinds[at] === "list of reels"), ...files.filter((_, at) => kinds[at] !== "list of reels")];
}
