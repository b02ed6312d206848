import { spawnSync } from "node:child_process";
import { homedir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { isExecutable, onPath } from "./open-browser.mjs";
import { packagedBrowser } from "./packaged-browser.mjs";

/**
 * @typedef {"named" | "installed" | "packaged" | "debian"} Source
 * @typedef {{ path: string, env: Record<string, string>, version: string, source: Source }} Browser
 * @typedef {object} World what the search asks of the machine; tests give their own
 * @property {NodeJS.ProcessEnv} env
 * @property {NodeJS.Platform} platform
 * @property {string} arch
 * @property {boolean} is_root
 * @property {() => string[]} installed programs that may be a browser, best first
 * @property {(path: string, env: Record<string, string>) => string | null} version what the program says it is, or null
 * @property {() => { path: string, env: Record<string, string> }} packaged
 * @property {() => void} debian installs `chromium` from Debian's packages
 */

const NAMES = ["chromium", "google-chrome", "google-chrome-stable", "chrome", "chromium-browser"];
const MAC = ["Google Chrome", "Chromium"].flatMap((name) =>
  ["/Applications", join(homedir(), "Applications")].map((folder) => `${folder}/${name}.app/Contents/MacOS/${name}`));
const LINUX_FOLDERS = ["/usr/bin", "/usr/local/bin", "/opt/google/chrome", "/snap/bin"];

function installedPrograms() {
  const elsewhere = process.platform === "darwin" ? MAC : LINUX_FOLDERS.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  const found = [...NAMES.map((name) => onPath(name)), ...elsewhere.filter(isExecutable)];
  return [...new Set(found.filter((path) => path !== null))];
}

/**
 * A program is a browser when it runs and says so: Ubuntu's `chromium-browser` may be only a note about snaps.
 *
 * @param {string} path
 * @param {Record<string, string>} env
 */
function saidVersion(path, env) {
  const { status, stdout } = spawnSync(path, ["--version"], { encoding: "utf8", timeout: 20_000, env: { ...process.env, ...env } });
  return status === 0 ? /(?:Chrom\w+|Google Chrome)\D* (\d+[\d.]*)/.exec(stdout)?.[1] ?? null : null;
}

function installFromDebian() {
  console.error("Installing chromium from Debian's packages for the tests …");
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
    const { status } = spawnSync("apt-get", args, {
      stdio: ["ignore", process.stderr, process.stderr], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
    if (status !== 0) throw new Error(`apt-get ${args[0]} failed`);
  }
}

/** @type {World} */
const HERE = {
  env: process.env, platform: process.platform, arch: process.arch, is_root: process.getuid?.() === 0,
  installed: installedPrograms, version: saidVersion, packaged: packagedBrowser, debian: installFromDebian,
};

/** @typedef {{ source: Source, hint: string, isOpen: (world: World) => boolean, offers: (world: World) => { path: string, env: Record<string, string> }[] }} Way */

/** @type {Way[]} the ways to a browser, in the order they are tried once none is named */
const WAYS = [
  {
    source: "installed", hint: "no Chromium or Chrome is installed that runs", isOpen: () => true,
    offers: (world) => world.installed().map((path) => ({ path, env: {} })),
  },
  {
    source: "packaged", hint: "npm's packaged browser is for Linux on x64", offers: (world) => [world.packaged()],
    isOpen: (world) => world.platform === "linux" && world.arch === "x64",
  },
  {
    source: "debian", hint: "Debian's packages need root and apt-get",
    isOpen: (world) => world.platform === "linux" && world.is_root && onPath("apt-get", world.env.PATH) !== null,
    offers: (world) => {
      world.debian();
      return world.installed().map((path) => ({ path, env: {} }));
    },
  },
];

/**
 * @param {Way} way
 * @param {World} world
 * @returns {Browser | string} the browser, or why there is none this way
 */
function tryWay(way, world) {
  if (!way.isOpen(world)) return way.hint;
  try {
    for (const { path, env } of way.offers(world)) {
      const version = world.version(path, env);
      if (version !== null) return { path, env, version, source: way.source };
    }
    return way.source === "installed" ? way.hint : `${way.source}: the browser does not run`;
  } catch (error) {
    return `${way.source}: ${error instanceof Error ? error.message : String(error)}`;
  }
}

/**
 * The browser for the tests: the one named by `SALTBENCH_BROWSER`, else an installed one, else the one an npm package
 * carries, else Debian's.
 *
 * `SALTBENCH_BROWSER_WITHOUT=installed,packaged` leaves ways out, to try the later ones.
 *
 * @param {World} [world]
 * @returns {Browser}
 * @throws {Error} saying what was tried and what to do; a named browser that does not run is never replaced
 */
export function findBrowser(world = HERE) {
  const named = world.env.SALTBENCH_BROWSER;
  if (named) {
    const version = world.version(named, {});
    if (version === null) throw new Error(`SALTBENCH_BROWSER names ${named}, which is not a Chromium or Chrome that runs.`);
    return { path: named, env: {}, version, source: "named" };
  }
  const without = (world.env.SALTBENCH_BROWSER_WITHOUT ?? "").split(",");
  const reasons = [];
  for (const way of WAYS.filter(({ source }) => !without.includes(source))) {
    const found = tryWay(way, world);
    if (typeof found !== "string") return found;
    reasons.push(found);
  }
  throw new Error(`No browser for the tests (${reasons.join("; ")}). Install Chromium or Google Chrome, or name one: SALTBENCH_BROWSER=/path/to/chrome npm test`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    const began = performance.now();
    const { path, version, source } = findBrowser();
    console.log(`${path}\n${source}, version ${version}, found in ${((performance.now() - began) / 1000).toFixed(1)} s`);
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}
