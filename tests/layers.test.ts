import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import { describe, expect, test } from "vitest";

/** Which folder of `src` may import which; a folder that is not listed fails. Imports go down, never up. */
const MAY_IMPORT: Record<string, readonly string[]> = {
  stats: [],
  "way-of-writing.ts": [],
  ui: ["way-of-writing.ts"],
  db: [],
  offline: ["ui", "commands"],
  commands: [],
  records: ["db"],
  answers: ["db", "stats", "answers", "way-of-writing.ts"],
  report: ["records", "answers", "db"],
  rooms: ["ui", "db", "stats", "records", "answers", "offline", "session.svelte.ts", "way-of-writing.ts", "first-steps"],
  "first-steps": ["ui", "session.svelte.ts"],
  "session.svelte.ts": ["db", "records", "answers", "ui", "world.ts", "opened-shop.svelte.ts"],
  "opened-shop.svelte.ts": ["db", "records", "answers", "ui", "world.ts", "shop-words.svelte.ts", "way-of-writing.ts"],
  "shop-words.svelte.ts": ["records", "answers", "world.ts", "way-of-writing.ts"],
  "world.ts": ["db", "records", "offline"],
  "rooms.ts": ["rooms"],
  "App.svelte": ["ui", "offline", "rooms.ts", "session.svelte.ts"],
  "open-app.ts": ["App.svelte", "ui", "offline", "session.svelte.ts", "way-of-writing.ts"],
  "main.ts": ["db", "ui", "open-app.ts"],
};
const SRC = resolve(import.meta.dirname, "../src");

function files(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? files(path) : /\.(ts|mjs|svelte)$/.test(entry.name) ? [path] : [];
  });
}

const layer = (path: string) => relative(SRC, path).split(sep)[0] ?? "";
const room = (path: string) => relative(SRC, path).split(sep).slice(0, 2).join("/");

function imports(path: string): string[] {
  const text = readFileSync(path, "utf8");
  const found = [...text.matchAll(/(?:from|import)\s*\(?\s*["'](\.[^"'?]+)(?:\?[^"']*)?["']|new URL\(\s*["'](\.[^"'?]+)["']/g)];
  return found.map((match) => resolve(dirname(path), match[1] ?? match[2] ?? ""));
}

describe("layers", () => {
  const sources = files(SRC);

  test("every folder of src has a line in the table", () => {
    const unknown = [...new Set(sources.map(layer))].filter((name) => !(name in MAY_IMPORT) && !name.endsWith(".d.ts"));
    expect(unknown).toEqual([]);
  });

  test("imports go down, and a room never imports another room", () => {
    const wrong = sources.flatMap((path) =>
      imports(path)
        .filter((target) => target.startsWith(SRC + sep))
        .filter((target) => {
          const from = layer(path), to = layer(target);
          if (from === "rooms" && to === "rooms") return room(path) !== room(target);
          return from !== to && !MAY_IMPORT[from]?.includes(to);
        })
        .map((target) => `${relative(SRC, path)} imports ${relative(SRC, target)}`));
    expect(wrong).toEqual([]);
  });

  test("answers do not import each other in circles", () => {
    const graph = new Map<string, Set<string>>();
    for (const path of sources.filter((file) => layer(file) === "answers")) {
      const from = room(path), to = graph.get(from) ?? new Set<string>();
      imports(path).filter((target) => layer(target) === "answers" && room(target) !== from).forEach((target) => to.add(room(target)));
      graph.set(from, to);
    }
    const reaches = (from: string, goal: string, seen = new Set<string>()): boolean =>
      [...(graph.get(from) ?? [])].some((next) => next === goal || (!seen.has(next) && reaches(next, goal, seen.add(next))));
    expect([...graph.keys()].filter((name) => reaches(name, name))).toEqual([]);
  });

  test("plain TypeScript never imports Svelte, except the frame", () => {
    const wrong = sources
      .filter((path) => path.endsWith(".ts") && !path.endsWith(".svelte.ts") && !["rooms.ts", "open-app.ts"].includes(relative(SRC, path)))
      .filter((path) => /from\s+["'](svelte|[^"']+\.svelte(\.ts)?)["']/.test(readFileSync(path, "utf8")));
    expect(wrong.map((path) => relative(SRC, path))).toEqual([]);
  });
});
