import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import { headersFor } from "./headers.mjs";
import { plainFiles } from "./plain-files.mjs";

/**
 * @typedef {object} Stored one file as it is sent
 * @property {Buffer} body
 * @property {string} tag strong ETag without quotes
 * @property {Record<string, string>} headers
 * @property {Map<"br" | "gzip", Buffer>} packed the same body precompressed
 */

/** @type {ReadonlyArray<["br" | "gzip", string]>} */
const PACKINGS = [["br", ".br"], ["gzip", ".gz"]];
const REPORTS = "policy-reports";

/**
 * Everything that can be asked for, read once: a build made later does not tear the pages of a running server apart,
 * and a path that is not in this list does not exist, however it is spelt.
 *
 * @param {string} folder
 * @returns {Map<string, Stored>}
 */
function readAll(folder) {
  const paths = new Set(plainFiles(folder));
  const isVariant = (/** @type {string} */ path) => PACKINGS.some(([, end]) => path.endsWith(end) && paths.has(path.slice(0, -end.length)));
  return new Map([...paths].filter((path) => !isVariant(path)).map((path) => {
    const body = readFileSync(join(folder, path));
    const there = PACKINGS.filter(([, end]) => paths.has(path + end));
    return [path, {
      body,
      tag: createHash("sha256").update(body).digest("base64url").slice(0, 22),
      headers: headersFor(path),
      packed: new Map(there.map(([name, end]) => [name, readFileSync(join(folder, path + end))])),
    }];
  }));
}

/**
 * The packing a browser accepts, best first; a packing given with `q=0` is refused by it.
 *
 * @param {Stored} file
 * @param {string | undefined} accepted the request's Accept-Encoding
 */
function packing(file, accepted = "") {
  const wanted = accepted.toLowerCase().split(",").map((item) => item.trim())
    .filter((item) => !/;\s*q=0(\.0*)?$/.test(item)).map((item) => item.split(";")[0]?.trim());
  return PACKINGS.map(([name]) => name).find((name) => wanted.includes(name) && file.packed.has(name));
}

/**
 * @param {string} url the request's target
 * @returns the path it names, relative to the served folder, or null when it cannot be read
 */
function pathOf(url) {
  try {
    const path = decodeURIComponent((url.split(/[?#]/)[0] ?? "").replace(/^\//, ""));
    return path === "" ? "index.html" : path;
  } catch (error) {
    if (error instanceof URIError) return null;
    throw error;
  }
}

/**
 * @param {Map<string, Stored>} files
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 */
function answer(files, request, response) {
  const plain = (/** @type {number} */ status, /** @type {string} */ text, /** @type {Record<string, string>} */ more = {}) =>
    response.writeHead(status, { ...headersFor(""), ...more }).end(request.method === "HEAD" ? undefined : `${text}\n`);
  if (request.method !== "GET" && request.method !== "HEAD") return plain(405, "Only GET and HEAD.", { Allow: "GET, HEAD" });
  const path = pathOf(request.url ?? "/");
  if (path === null) return plain(400, "That address cannot be read.");
  const file = files.get(path);
  if (!file) return plain(404, "There is nothing here.");
  const name = packing(file, request.headers["accept-encoding"]);
  const body = name === undefined ? file.body : file.packed.get(name) ?? file.body;
  const tag = `"${file.tag}${name === undefined ? "" : `-${name}`}"`;
  const headers = {
    ...file.headers, ETag: tag,
    ...(file.packed.size > 0 && { Vary: "Accept-Encoding" }),
    ...(name !== undefined && { "Content-Encoding": name }),
  };
  if (request.headers["if-none-match"] === tag) return response.writeHead(304, headers).end();
  response.writeHead(200, { ...headers, "Content-Length": body.length });
  return response.end(request.method === "HEAD" ? undefined : body);
}

/**
 * Takes the browser's reports of broken policy, and asks for them in each policy: a worker's broken policy shows nowhere
 * else.
 *
 * @param {Map<string, Stored>} files
 * @param {(report: string) => void} onReport
 */
function reporting(files, onReport) {
  for (const { headers } of files.values()) headers["Content-Security-Policy"] += `; report-uri /${REPORTS}`;
  return (/** @type {import("node:http").IncomingMessage} */ request, /** @type {import("node:http").ServerResponse} */ response) => {
    if (request.method !== "POST" || request.url !== `/${REPORTS}`) return false;
    let text = "";
    request.on("data", (part) => (text += part)).on("end", () => onReport(text));
    response.writeHead(204).end();
    return true;
  };
}

/**
 * Serves the files of a folder as they are now, to this machine only.
 *
 * @param {{ folder: string, port?: number, onReport?: (report: string) => void }} where port 0, the default, takes any
 *   free one; `onReport`, for tests, gets each report of broken policy as JSON
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>} `url` ends with a slash
 * @throws {RangeError} if `folder` has no `index.html`
 * @throws {NodeJS.ErrnoException} with code `EADDRINUSE` if the port is taken
 */
export async function serve({ folder, port = 0, onReport }) {
  const files = readAll(folder);
  if (!files.has("index.html")) throw new RangeError(`serve: folder must hold an index.html, got ${folder}`);
  const isReport = onReport ? reporting(files, onReport) : () => false;
  const server = createServer((request, response) => void (isReport(request, response) || answer(files, request, response)));
  await new Promise((done, fail) => {
    server.once("error", fail);
    server.listen(port, "127.0.0.1", () => done(undefined));
  });
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("The server has no address.");
  return {
    url: `http://127.0.0.1:${address.port}/`,
    port: address.port,
    close: () => new Promise((done, fail) => {
      server.close((error) => (error ? fail(error) : done()));
      server.closeAllConnections();
    }),
  };
}
