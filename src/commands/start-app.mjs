import { ensureBuilt } from "./build.mjs";
import { APP } from "./freshness.mjs";
import { ensureInstalled } from "./install.mjs";
import { openBrowser } from "./open-browser.mjs";
import { announce, runningAt } from "./running.mjs";
import { serve } from "./server.mjs";

const USUAL_PORT = 4173;
const TRIES = 20;

/** @param {unknown} error */
const isTaken = (error) => error instanceof Error && "code" in error && error.code === "EADDRINUSE";

/**
 * The port asked for, or null when none was.
 *
 * @param {string | undefined} text the environment's PORT
 * @throws {RangeError} if it is no port number
 */
export function askedPort(text) {
  if (text === undefined || text === "") return null;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65535) throw new RangeError(`PORT must be a number from 0 to 65535, got ${text}`);
  return port;
}

/**
 * Serves on the port asked for, else on the usual one, else on the next free one above it.
 *
 * @param {string} folder
 * @param {number | null} port
 */
export async function serveSomewhere(folder, port) {
  const ports = port === null ? Array.from({ length: TRIES }, (_, i) => USUAL_PORT + i) : [port];
  for (const each of ports) {
    try {
      return await serve({ folder, port: each });
    } catch (error) {
      if (!isTaken(error)) throw error;
    }
  }
  const range = ports.length === 1 ? `Port ${ports[0]} is` : `The ports ${ports[0]} to ${ports.at(-1)} are all`;
  throw new Error(`${range} taken by another program. Choose another, for instance: PORT=5050 npm start`);
}

/** A browser keeps records by address, port included: another port is another, empty, shop.
 * @param {number} port
 */
function warnOfOtherPort(port) {
  if (port === USUAL_PORT) return;
  console.log(`Port ${USUAL_PORT} is taken by another program. Your browser keeps records by address:`);
  console.log(`what you brought in at http://127.0.0.1:${USUAL_PORT}/ does not show here.`);
}

/** @param {{ url: string, close: () => Promise<void> }} server */
function endOnSignal(server) {
  const takeBack = announce(server.url);
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) {
    process.once(signal, () => {
      takeBack();
      void server.close().then(() => process.exit(0));
    });
  }
}

async function installBuildServe() {
  const port = askedPort(process.env.PORT);
  const running = port === null ? await runningAt() : null;
  if (running !== null) {
    console.log(`Saltbench already runs at ${running}\nTo start a newer version, end that one first (Ctrl-C where it was started).`);
    return running;
  }
  ensureInstalled();
  await ensureBuilt();
  const server = await serveSomewhere(APP, port);
  endOnSignal(server);
  if (port === null) warnOfOtherPort(server.port);
  console.log(`\nSaltbench is at ${server.url}\nKeep this window open while you use it; Ctrl-C ends it. Your records stay in your browser.\n`);
  return server.url;
}

/** Installs, builds, serves and says where, until Ctrl-C. */
export async function start() {
  try {
    openBrowser(await installBuildServe());
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error));
    process.exitCode = 1;
  }
}
