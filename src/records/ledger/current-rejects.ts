import type { FileTally, Reject } from "./ledger.ts";

/** What of an import tells which rows are still to fix. */
export interface ImportRejects {
  readonly files: readonly Pick<FileTally, "file" | "unreadable">[];
  readonly rejects: readonly Reject[];
}

function byFile(rejects: readonly Reject[]): Map<string, Reject[]> {
  const found = new Map<string, Reject[]>();
  for (const reject of rejects) {
    const own = found.get(reject.file);
    if (own) own.push(reject);
    else found.set(reject.file, [reject]);
  }
  return found;
}

/**
 * Rows still to fix: of each file name those of the newest import that read it, so that bringing a file in again replaces
 * its earlier list. An import that could not read the file changes nothing. In the order of files and lines.
 *
 * @param imports in import order
 */
export function currentRejects(imports: readonly ImportRejects[]): Reject[] {
  const newest = new Map<string, readonly Reject[]>();
  for (const { files, rejects } of imports) {
    for (const { file, unreadable } of files) if (unreadable === null) newest.set(file, []);
    for (const [file, own] of byFile(rejects)) newest.set(file, own);
  }
  return [...newest.values()].flat().sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line));
}
