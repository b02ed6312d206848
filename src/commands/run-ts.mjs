/**
 * Runs one TypeScript entry of ours in Node, with the imports the app's bundler understands (`?raw` and the like).
 *
 *     node src/commands/run-ts.mjs FILE [arguments…]
 *
 * The entry exports `main(argv: string[]): Promise<number>`, and that number is the exit code; an entry without `main`
 * does its work while it loads and exits with 0. Any failure exits with 1 and one line on standard error. A stack follows
 * when the failure is of a kind only a programming mistake has, or when `SALTBENCH_STACK=1` asks for it. Exits with 64
 * when FILE is missing from the call.
 */
import { existsSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { ensureInstalled } from "./install.mjs";
import { requireNode } from "./node-version.mjs";
import { ROOT } from "./root.mjs";

const MISTAKES = new Set(["TypeError", "ReferenceError", "SyntaxError"]);

/** A Vite that only reads and transforms: no port, no watcher, no browser half. */
async function transformer() {
  const { createServer } = await import("vite");
  return createServer({
    root: ROOT,
    configFile: join(ROOT, "vite.config.ts"),
    appType: "custom",
    logLevel: "silent",
    clearScreen: false,
    cacheDir: join(ROOT, "node_modules/.cache/run-ts"),
    server: { middlewareMode: true, hmr: false, ws: false, watch: null },
    optimizeDeps: { noDiscovery: true, include: [] },
  });
}

/**
 * One line for whoever typed the command; the causes of a wrapped error belong to it.
 *
 * @param {unknown} error
 * @returns {string}
 */
function line(error) {
  if (!(error instanceof Error)) return String(error);
  const cause = error.cause === undefined ? "" : ` (${line(error.cause)})`;
  return error.message.trim().split("\n")[0] + cause;
}

/** An entry that cannot even be loaded is a mistake of ours, never the caller's. */
class NotLoaded extends Error {
  /** @override */
  name = "NotLoaded";
}

/**
 * @param {string} file
 * @param {unknown} error
 */
function complain(file, error) {
  console.error(`${relative(ROOT, file)}: ${line(error)}`);
  const mistake = error instanceof NotLoaded || (error instanceof Error && MISTAKES.has(error.name));
  if (mistake || process.env.SALTBENCH_STACK === "1") console.error(error);
}

/**
 * @param {import("vite").ViteDevServer} vite
 * @param {string} file
 */
async function load(vite, file) {
  try {
    return await vite.ssrLoadModule(file);
  } catch (error) {
    if (error instanceof Error) vite.ssrFixStacktrace(error);
    throw new NotLoaded("the file cannot be loaded", { cause: error });
  }
}

/**
 * @param {string} file
 * @param {string[]} argv
 * @returns {Promise<number>} the exit code of `file` called with `argv`
 */
async function run(file, argv) {
  /** @type {import("vite").ViteDevServer | undefined} */
  let vite;
  try {
    if (!existsSync(join(ROOT, "node_modules/vite"))) ensureInstalled();
    vite = await transformer();
    const entry = await load(vite, file);
    const code = typeof entry.main === "function" ? await entry.main(argv) : 0;
    if (!Number.isInteger(code)) throw new TypeError(`main must give an exit code, gave ${String(code)}`);
    return code;
  } catch (error) {
    if (error instanceof Error) vite?.ssrFixStacktrace(error);
    complain(file, error);
    return 1;
  } finally {
    await vite?.close();
  }
}

/**
 * Leaves once both outputs are written; open handles of the entry (worker threads, timers) do not keep us.
 *
 * @param {number} code
 */
async function leave(code) {
  for (const stream of [process.stdout, process.stderr]) await new Promise((done) => stream.write("", () => done(undefined)));
  process.exit(code);
}

requireNode();
const [name, ...argv] = process.argv.slice(2);
const file = resolve(name ?? "");
if (name === undefined || !existsSync(file)) {
  console.error(name === undefined ? "Usage: node src/commands/run-ts.mjs FILE [arguments…]" : `There is no file ${name}.`);
  await leave(64);
}
process.on("unhandledRejection", (error) => {
  complain(file, error);
  void leave(1);
});
await leave(await run(file, argv));
