import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { plainFiles } from "./plain-files.mjs";
import { ROOT } from "./root.mjs";

const INPUTS = ["src", "data", "package.json", "package-lock.json", "svelte.config.js", "vite.config.ts"];

/** The folder the app is built into. */
export const APP = join(ROOT, "dist/app");

/** The mark in it that says what it was built from; a build by other means leaves none, and is not taken for one of ours. */
export const STAMP = ".built.json";

/**
 * One hash over names and contents of all that the built app depends on.
 *
 * @param {string} [root]
 * @param {readonly string[]} [inputs] files and folders, relative to `root`
 */
export function sourceHash(root = ROOT, inputs = INPUTS) {
  const hash = createHash("sha256");
  for (const path of inputs.flatMap((input) => plainFiles(root, input))) {
    const body = readFileSync(join(root, path));
    hash.update(`${path}\0${body.length}\0`).update(body);
  }
  return hash.digest("hex");
}

/**
 * Why the built app cannot be used, or null when it is what the sources say.
 *
 * @param {{ app?: string, hash?: string }} [where]
 * @returns {"missing" | "stale" | null}
 */
export function staleness({ app = APP, hash = sourceHash() } = {}) {
  if (!existsSync(join(app, STAMP)) || !existsSync(join(app, "index.html"))) return "missing";
  return JSON.parse(readFileSync(join(app, STAMP), "utf8")).source_hash === hash ? null : "stale";
}
