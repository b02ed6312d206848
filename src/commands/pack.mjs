import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { plainFiles } from "./plain-files.mjs";
import { ROOT } from "./root.mjs";

const WORTH_PACKING = /\.(css|csv|html|js|json|svg|txt|wasm)$/;
const LEAST_BYTES = 1024;
const CACHE = join(ROOT, "node_modules/.cache/packed");

/** Brotli at 5: the engine's 34 MB take two seconds and 6.2 MB; level 9 takes eight for 5.9 MB (two cores, measured).
 * @type {Record<"br" | "gz", (body: Buffer) => Promise<Buffer>>}
 */
const PACKERS = {
  br: (body) => promisify(brotliCompress)(body, {
    params: { [constants.BROTLI_PARAM_QUALITY]: 5, [constants.BROTLI_PARAM_SIZE_HINT]: body.length },
  }),
  gz: (body) => promisify(gzip)(body, { level: 6 }),
};

/**
 * @param {Buffer} body
 * @param {"br" | "gz"} kind
 * @param {string} cache folder that remembers packed bodies by their content
 */
async function packed(body, kind, cache) {
  const known = join(cache, `${createHash("sha256").update(body).digest("hex")}.${kind}`);
  if (existsSync(known)) return readFileSync(known);
  const result = await PACKERS[kind](body);
  mkdirSync(cache, { recursive: true });
  writeFileSync(`${known}.${process.pid}`, result);
  renameSync(`${known}.${process.pid}`, known);
  return result;
}

/**
 * Lays a `.br` and a `.gz` beside each file that shrinks by a tenth or more.
 *
 * @param {string} folder
 * @param {string} [cache]
 * @returns {Promise<number>} how many files were written
 */
export async function pack(folder, cache = CACHE) {
  const paths = plainFiles(folder).filter((path) => WORTH_PACKING.test(path));
  const written = await Promise.all(paths.map(async (path) => {
    const body = readFileSync(join(folder, path));
    if (body.length < LEAST_BYTES) return 0;
    const small = await Promise.all((/** @type {const} */ (["br", "gz"])).map(async (kind) => ({ kind, body: await packed(body, kind, cache) })));
    const worth = small.filter((variant) => variant.body.length < body.length * 0.9);
    worth.forEach((variant) => writeFileSync(join(folder, `${path}.${variant.kind}`), variant.body));
    return worth.length;
  }));
  return written.reduce((sum, count) => sum + count, 0);
}
