import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { APP, STAMP, sourceHash, staleness } from "./freshness.mjs";
import { ensureInstalled } from "./install.mjs";
import { makeInstallable, versionOf } from "./installable.mjs";
import { requireNode } from "./node-version.mjs";
import { pack } from "./pack.mjs";
import { ROOT } from "./root.mjs";

/**
 * Builds the app beside the old one, packs it and then puts it in the old one's place, so that whoever reads `dist/app`
 * never meets half a build.
 *
 * @param {{ quiet?: boolean }} [how]
 */
export async function build({ quiet = false } = {}) {
  const { build: bundle } = await import("vite");
  const fresh = join(dirname(APP), `.building-${process.pid}`);
  const old = join(dirname(APP), `.old-${process.pid}`);
  const source_hash = sourceHash();
  try {
    await bundle({ root: join(ROOT, "src"), configFile: join(ROOT, "vite.config.ts"), logLevel: quiet ? "error" : "info", build: { outDir: fresh } });
    await makeInstallable(fresh, versionOf(source_hash));
    await pack(fresh);
    writeFileSync(join(fresh, STAMP), `${JSON.stringify({ source_hash })}\n`);
    mkdirSync(dirname(APP), { recursive: true });
    if (existsSync(APP)) renameSync(APP, old);
    renameSync(fresh, APP);
  } finally {
    for (const folder of [fresh, old]) rmSync(folder, { recursive: true, force: true });
  }
}

/** Builds when there is no app or the sources have changed since. */
export async function ensureBuilt() {
  const why = staleness();
  if (why === null) return;
  console.error(why === "missing" ? "Building Saltbench …" : "Something has changed; building Saltbench again …");
  await build({ quiet: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  requireNode();
  try {
    ensureInstalled();
    await build();
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}
