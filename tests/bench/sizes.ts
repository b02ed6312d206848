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
  /** Scripts and styles fetched when a room is opened first of all, beyond what every page has; biggest first. */
  rooms: { room: string; bytes: number }[];
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

/** Scripts a script imports by name, and what those import, itself with them. */
function imported(path: string, read: (path: string) => string, found = new Set<string>()): Set<string> {
  if (found.has(path)) return found;
  found.add(path);
  for (const match of read(path).matchAll(/(?:^|[;}\n])(?:import|export)(?:[^;"'`()]*?from)?\s*["'`](\.[^"'`]+)["'`]/g)) imported(posix.join(posix.dirname(path), match[1] ?? ""), read, found);
  return found;
}

/** Every room by its name in the address, with the script it begins with. */
export function roomScripts(scripts: readonly { path: string; text: string }[]): { room: string; path: string }[] {
  return scripts.flatMap(({ path, text }) => [...text.matchAll(/slug:["'`]([a-z-]+)["'`],title:["'`][^"'`]*["'`],load:\(\)=>[^{}]*?import\(["'`]\.\/([^"'`]+)["'`]\)/g)]
    .map(([, room = "", file = ""]) => ({ room, path: posix.join(posix.dirname(path), file) })));
}

/** Measures a built app; files that come precompressed count as the server sends them. */
export function sizes(app: string): Sizes {
  const paths = plainFiles(app).filter((path) => !/\.(br|gz)$/.test(path));
  const bytes = new Map(paths.map((path) => [path, gzipSync(readFileSync(join(app, path))).length]));
  const read = (path: string) => readFileSync(join(app, path), "utf8"), before = scriptsBeforeRooms(read("index.html"), read);
  const scripts = paths.filter((path) => path.startsWith("assets/") && path.endsWith(".js")).map((path) => ({ path, text: read(path) }));
  const rooms = roomScripts(scripts).map(({ room, path }) => ({ room, bytes: [...imported(path, read)].filter((one) => !before.has(one)).reduce((total, one) => total + (bytes.get(one) ?? 0), 0) }));
  const sum = (belongs: (path: string) => boolean) => paths.filter(belongs).reduce((total, path) => total + (bytes.get(path) ?? 0), 0);
  return {
    scripts_before_rooms: sum((path) => before.has(path)),
    scripts_of_rooms_and_engine: sum((path) => path.startsWith("assets/") && path.endsWith(".js") && !before.has(path)),
    styles: sum((path) => path.endsWith(".css")),
    fonts: sum((path) => path.endsWith(".woff2")),
    workers: sum((path) => path.startsWith("workers/")),
    engine: sum((path) => path.endsWith(".wasm")),
    rooms: rooms.sort((a, b) => b.bytes - a.bytes),
  };
}
