import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { npm } from "./install.mjs";
import { ROOT } from "./root.mjs";

const PINNED = join(ROOT, "src/commands/packaged-browser");
const HOME = join(ROOT, "node_modules/.cache/packaged-browser");

/**
 * Run in its own process, because the package settles where it unpacks, and which libraries it brings, while it loads.
 * Without the runtime's name it would leave its libraries (nss and others) packed.
 */
const UNPACK = `
  const { default: chromium } = await import("@sparticuz/chromium");
  const path = await chromium.executablePath();
  const { LD_LIBRARY_PATH, FONTCONFIG_PATH } = process.env;
  console.log(JSON.stringify({ path, env: { LD_LIBRARY_PATH, FONTCONFIG_PATH } }));
`;

/** npm tells its children about the project it runs in; a child for another folder must not hear of it. */
function plainEnvironment() {
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_(config_local_prefix|package_|lifecycle_)/.test(name)));
}

function install() {
  console.error("No browser is installed here; fetching one for the tests from npm …");
  mkdirSync(HOME, { recursive: true });
  cpSync(PINNED, HOME, { recursive: true });
  const [command, args] = npm(["ci", "--no-audit", "--no-fund", "--prefix", HOME]);
  const { status, error } = spawnSync(command, args, { cwd: HOME, env: plainEnvironment(), stdio: ["ignore", process.stderr, process.stderr] });
  if (error || status !== 0) throw new Error("npm could not install the packaged browser", { cause: error });
}

/** The package's own font list looks only in `/tmp` and in places of its cloud; a browser that finds no font at all may fall.
 * @param {string} folder
 */
const fontList = (folder) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder}/fonts</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir>${folder}/font-cache</cachedir>
</fontconfig>
`;

/** @param {string} folder */
function unpack(folder) {
  const done = join(folder, "done.json");
  if (existsSync(done)) return JSON.parse(readFileSync(done, "utf8"));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", UNPACK], {
    cwd: HOME, encoding: "utf8",
    env: { ...plainEnvironment(), TMPDIR: folder, AWS_EXECUTION_ENV: "AWS_Lambda_nodejs20.x" },
  });
  if (status !== 0) throw new Error(`the packaged browser could not be unpacked: ${stderr.trim()}`);
  writeFileSync(join(folder, "fonts/fonts.conf"), fontList(folder));
  writeFileSync(done, stdout);
  return JSON.parse(stdout);
}

/**
 * The browser that an npm package carries, installed and unpacked below `node_modules/.cache` at the first call
 * (74 MB, then 270 MB unpacked).
 *
 * @returns {{ path: string, env: Record<string, string> }}
 * @throws {Error} when npm or the unpacking fails
 */
export function packagedBrowser() {
  if (!existsSync(join(HOME, "node_modules/.package-lock.json"))) install();
  return unpack(join(HOME, "unpacked"));
}
