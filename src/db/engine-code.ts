import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { namedIn, withFewerExports } from "./fewer-exports.ts";

/** Another number for another way of making it. */
const MADE = 1;

/**
 * Path of the engine's code as we run it, in browsers and in Node; made once from the package and kept beside it.
 *
 * @throws what the file system throws
 */
export function engineCode(): string {
  const whole = createRequire(import.meta.url).resolve("@duckdb/duckdb-wasm/dist/duckdb-eh.wasm"), dist = dirname(whole);
  const { version } = JSON.parse(readFileSync(join(dist, "../package.json"), "utf8")) as { version: string };
  const folder = join(dist, "../../../.cache/saltbench"), path = join(folder, `engine-${version}-${MADE}.wasm`);
  if (existsSync(path)) return path;
  const scripts = ["duckdb-browser-eh.worker.js", "duckdb-node-eh.worker.cjs"].map((name) => readFileSync(join(dist, name), "utf8"));
  mkdirSync(folder, { recursive: true });
  // Two processes may make it at once: each writes its own, and the last to be renamed stays.
  const begun = `${path}.${process.pid}`;
  writeFileSync(begun, withFewerExports(readFileSync(whole), namedIn(scripts.join("\n"))));
  renameSync(begun, path);
  return path;
}
