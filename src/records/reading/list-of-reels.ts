import { tableFromIPC } from "apache-arrow";
import type { Sheet } from "../formats/sheet.ts";
import { Unreadable } from "../formats/unreadable.ts";
import type { KnownModel } from "../understanding/understanding.ts";
import type { ReelKind } from "../vocabulary.ts";
import { layoutOf } from "./headings.ts";

/** Our own list of reels, another table of ours with nothing left over, or anything else. */
export type SheetKind = "list of reels" | "other table of ours" | "other";

function layoutIn(cells: readonly string[], file: string): ReturnType<typeof layoutOf> | null {
  try {
    return layoutOf(cells, file, null);
  } catch (error) {
    // Headings that are ours in part; what is wrong is told when the sheet is read.
    if (error instanceof Unreadable) return null;
    throw error;
  }
}

/** What a sheet is by its first row. */
export async function kindOfSheet(sheet: Sheet, file: string): Promise<SheetKind> {
  const [first] = await sheet.head(1), layout = first ? layoutIn(first.cells, file) : null;
  if (layout?.plans.length !== 1 || layout.missing.length > 0) return "other";
  if (layout.plans[0]?.table.name === "models") return "list of reels";
  return layout.left_out.length === 0 ? "other table of ours" : "other";
}

/**
 * The shop's lists of reels before all others, where some are of the shop's own making: maker and model in those are told apart by the
 * lists, whatever the order in which they were given. Our own tables need no list, and stay in order.
 *
 * @param kinds of each of `given`, in order
 */
export function listsFirst<Given>(given: readonly Given[], kinds: readonly SheetKind[]): Given[] {
  if (!kinds.includes("other")) return [...given];
  return [...given.filter((_, at) => kinds[at] === "list of reels"), ...given.filter((_, at) => kinds[at] !== "list of reels")];
}

/** The names and kinds in staged rows of `models`; texts stand there as dictionaries. */
function modelsIn(stream: Uint8Array): KnownModel[] {
  const table = tableFromIPC(stream), [maker, model, kind] = ["maker", "model", "reel_kind"].map((name) => table.getChild(name));
  return Array.from({ length: table.numRows }, (_, at) => ({
    maker: (maker?.get(at) ?? null) as string | null, model: model?.get(at) as string, reel_kind: (kind?.get(at) ?? null) as ReelKind | null,
  }));
}

const after = (a: string | null, b: string | null): number => (a === b ? 0 : a === null ? 1 : b === null ? -1 : a < b ? -1 : 1);

/**
 * The shop's models with those of a list that is being read: each once, in one order, as the ledger will give them.
 *
 * @param stream Arrow stream of staged rows of `models`
 */
export function withList(known: readonly KnownModel[], stream: Uint8Array): KnownModel[] {
  const found = new Map<string, KnownModel>();
  for (const { maker, model, reel_kind = null } of [...known, ...modelsIn(stream)]) {
    const key = JSON.stringify([maker, model]), before = found.get(key)?.reel_kind ?? null;
    found.set(key, { maker, model, reel_kind: before === null || (reel_kind !== null && reel_kind > before) ? reel_kind : before });
  }
  return [...found.values()].sort((a, b) => after(a.maker, b.maker) || after(a.model, b.model));
}
