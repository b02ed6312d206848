import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./root.mjs";

/** @typedef {{ version?: string, optional?: boolean, link?: boolean, os?: string[], cpu?: string[], libc?: string[] }} Locked */

/**
 * @param {string} path of a lock file
 * @returns {Record<string, Locked>} empty when npm has not finished writing one
 */
function locked(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, "utf8")).packages : {};
}

const isMusl = () => {
  const report = /** @type {{ header?: { glibcVersionRuntime?: string } }} */ (process.report?.getReport() ?? {});
  return process.platform === "linux" && report.header?.glibcVersionRuntime === undefined;
};

/**
 * Whether npm must have installed this package here: an optional one only when it is made for this very machine.
 *
 * @param {Locked} entry
 * @param {string} libc
 */
function isNeeded(entry, libc) {
  if (!entry.optional) return true;
  if (!entry.os || !entry.cpu) return false;
  return entry.os.includes(process.platform) && entry.cpu.includes(process.arch) && (entry.libc?.includes(libc) ?? true);
}

/**
 * The packages that `package-lock.json` asks for and `node_modules` has not, or has in another version.
 *
 * Versions are compared, not times: a checkout or a copy changes times. npm writes its own list of what is there last,
 * so an install that was cut off shows up as everything missing.
 *
 * @param {string} [root]
 * @returns {string[]} folders such as `node_modules/vite`
 */
export function missingPackages(root = ROOT) {
  const wanted = locked(join(root, "package-lock.json"));
  const there = locked(join(root, "node_modules/.package-lock.json"));
  const libc = isMusl() ? "musl" : "glibc";
  return Object.entries(wanted)
    .filter(([path, entry]) => path !== "" && !entry.link && isNeeded(entry, libc))
    .filter(([path, entry]) => there[path]?.version !== entry.version || !existsSync(join(root, path, "package.json")))
    .map(([path]) => path);
}

/**
 * The command that is npm: the one that started us, else the one on the path.
 *
 * @param {string[]} args
 * @returns {[string, string[]]}
 */
export function npm(args) {
  const script = process.env.npm_execpath;
  return script?.endsWith(".js") && existsSync(script) ? [process.execPath, [script, ...args]] : ["npm", args];
}

/**
 * Installs what is missing, exactly as the lock file says; npm's own words go to standard error.
 *
 * @throws {Error} with a sentence for whoever typed the command
 */
export function ensureInstalled() {
  const missing = missingPackages();
  if (missing.length === 0) return;
  console.error(`Installing what Saltbench is built from (${missing.length} packages, a minute or two) …`);
  const [command, args] = npm(["ci", "--prefer-offline", "--include=dev", "--include=optional", "--no-audit", "--no-fund"]);
  const { status, error } = spawnSync(command, args, { cwd: ROOT, stdio: ["ignore", process.stderr, process.stderr] });
  if (error || status !== 0) {
    throw new Error("npm could not install the packages (its own words are above). This first step needs the internet.");
  }
  const still = missingPackages();
  if (still.length > 0) throw new Error(`npm ended without installing ${still.slice(0, 3).join(", ")}. Delete node_modules and try again.`);
}
