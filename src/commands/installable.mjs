import { createHash } from "node:crypto";
import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { plainFiles } from "./plain-files.mjs";
import { ROOT } from "./root.mjs";

const SERVICE_WORKER = "service-worker.js";
const AS_THEY_ARE = ["saltbench.webmanifest", "icons"];
const NO_VERSION = '<meta name="version" content=""';

/**
 * How a build calls itself: the version of `package.json` and the first digits of the hash of its sources.
 *
 * @param {string} source_hash
 * @returns {string} `0.1.0 (3fa9c1d2)`
 */
export function versionOf(source_hash) {
  const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  return `${version} (${source_hash.slice(0, 8)})`;
}

/**
 * The files of a built app with their hashes, as `Program` of `src/offline/program.ts`.
 *
 * @param {string} folder not packed yet, or packed: what lies precompressed beside a file is left out
 * @param {string} version
 */
function listed(folder, version) {
  const all = plainFiles(folder), paths = all.filter((path) => !path.startsWith(SERVICE_WORKER) && !isPacked(path, all));
  const bodies = paths.map((path) => readFileSync(join(folder, path)));
  return {
    version,
    files: Object.fromEntries(paths.map((path, i) => [path, createHash("sha256").update(bodies[i] ?? "").digest("base64")])),
    bytes: bodies.reduce((sum, body) => sum + body.length, 0),
  };
}

/**
 * @param {string} path
 * @param {readonly string[]} all
 */
const isPacked = (path, all) => /\.(br|gz)$/.test(path) && all.includes(path.replace(/\.(br|gz)$/, ""));

/**
 * Writes the service worker of a built app, which knows every file of it; last of all, as nothing may change after it.
 *
 * @param {string} folder
 * @param {string} version
 */
export async function writeServiceWorker(folder, version) {
  const { build: bundle } = await import("vite");
  await bundle({
    configFile: false, root: join(ROOT, "src/offline"), publicDir: false, logLevel: "error",
    define: { PROGRAM: JSON.stringify(listed(folder, version)) },
    build: {
      outDir: folder, emptyOutDir: false, target: "es2022",
      rolldownOptions: { input: join(ROOT, "src/offline/service-worker.ts"), output: { format: "iife", entryFileNames: SERVICE_WORKER } },
    },
  });
}

/**
 * Makes a freshly built app one that can be installed and opened without a network: its version in the page, the manifest
 * with its icons, the service worker.
 *
 * @param {string} folder
 * @param {string} version
 * @throws {RangeError} if the page has no place for its version
 */
export async function makeInstallable(folder, version) {
  const page = join(folder, "index.html"), text = readFileSync(page, "utf8");
  if (!text.includes(NO_VERSION)) throw new RangeError(`makeInstallable: index.html must hold ${NO_VERSION}>`);
  writeFileSync(page, text.replace(NO_VERSION, `<meta name="version" content="${version}"`));
  for (const name of AS_THEY_ARE) cpSync(join(ROOT, "src", name), join(folder, name), { recursive: true });
  await writeServiceWorker(folder, version);
}
