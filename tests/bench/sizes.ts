import { readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { gzipSync } from "node:zlib";
import { plainFiles } from "../../src/commands/plain-files.mjs";

/** Bytes of the built app as a browser fetches them, gzip, by what they are for. */
export interface Sizes {
  /** Scripts that the page names and what those import before anything is shown. */
  scripts_before_rooms: number;
  scripts_of_rooms_and_engine: number;
  styles: number;
  fonts: number;
  workers: number;
  engine: number;
}

/**
 * The scripts a page loads before it does anything: those it names, what these fetch at once, and what any of them imports by name.
 *
 * @param read text of a file by its path in the built app
 * @returns paths in the built app
 */
export function scriptsBeforeRooms(page: string, read: (path: string) => string): Set<string> {
  const found = new Set<string>();
  const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g)].map((match) => match[1] ?? ""), waiting = [...named];
  for (const path of named) {
    const fetched = [...read(path).matchAll(/import\(\s*["'`]\.\/([^"'`]+)["'`]\s*\)/g)];
    waiting.push(...fetched.map((match) => posix.join(posix.dirname(path), match[1] ?? "")));
  }
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (found.has(path)) continue;
    found.add(path);
    const folder = posix.dirname(path);
    for (const match of read(path).matchAll(/(?:^|[;}\n])(?:import|export)(?:[^;"'`()]*?from)?\s*["'`](\.[^"'`]+)["'`]/g)) {
      waiting.push(posix.join(folder, match[1] ?? ""));
    }
  }
  return found;
}

/** Measures a built app; files that come precompressed count as the server sends them. */
export function sizes(app: string): Sizes {
  const paths = plainFiles(app).filter((path) => !/\.(br|gz)$/.test(path));
  const bytes = new Map(paths.map((path) => [path, gzipSync(readFileSync(join(app, path))).length]));
  const before = scriptsBeforeRooms(readFileSync(join(app, "index.html"), "utf8"), (path) => readFileSync(join(app, path), "utf8"));
  const sum = (belongs: (path: string) => boolean) => paths.filter(belongs).reduce((total, path) => total + (bytes.get(path) ?? 0), 0);
  return {
    scripts_before_rooms: sum((path) => before.has(path)),
    scripts_of_rooms_and_engine: sum((path) => path.startsWith("assets/") && path.endsWith(".js") && !before.has(path)),
    styles: sum((path) => path.endsWith(".css")),
    fonts: sum((path) => path.endsWith(".woff2")),
    workers: sum((path) => path.startsWith("workers/")),
    engine: sum((path) => path.endsWith(".wasm")),
  };
}
