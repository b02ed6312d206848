import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { importFilesOf } from "./import-files.ts";
import type { Format } from "./import-files.ts";
import { importTimeAlone } from "./import.ts";
import type { ImportTime } from "./import.ts";

/** Imports of one shop from one format of file; `bytes` of the files as they lie on the disk. */
export interface ImportsAtSize { readonly format: Format; readonly bytes: number; readonly findings: number; readonly times: readonly ImportTime[] }

/** Writes the files once and imports them so many times, each in a process of its own. @throws {Error} when not all of them came in */
export async function importsAtSize(format: Format, enough: number, runs: number): Promise<ImportsAtSize> {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-import-")), times: ImportTime[] = [];
  try {
    const files = importFilesOf(folder, format, enough);
    while (times.length < runs) times.push(await importTimeAlone(files));
    console.log(`Import of ${files.findings} findings, ${format}: ${times.map(({ milliseconds }) => milliseconds.toFixed(0)).join(", ")} ms`);
    return { format, bytes: files.bytes, findings: files.findings, times };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
