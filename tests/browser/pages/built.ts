import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { build } from "vite";

/** Builds a page of trials as the app is built, into a folder of its own; `remove` clears it away. */
export async function builtPage(root = import.meta.dirname): Promise<{ folder: string; remove(): void }> {
  const folder = mkdtempSync(join(tmpdir(), "saltbench-trial-"));
  await build({
    configFile: resolve(import.meta.dirname, "../../../vite.config.ts"), root, logLevel: "error",
    build: { outDir: folder, emptyOutDir: true },
  });
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
