import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";

/** One copied reference case: data, values computed elsewhere, and the tolerance they come with (SOURCE.md beside them). */
export interface ReferenceCase {
  rows: Record<string, string>[];
  expected: { tolerance: Record<string, number>; values: Nested };
}
export interface Nested { [key: string]: Nested }

export function readRows(path: string): Record<string, string>[] {
  const [heading = "", ...lines] = readFileSync(resolve(import.meta.dirname, path), "utf8").trim().split("\n");
  const names = heading.split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? ""]));
  });
}

export function readCase(name: string): ReferenceCase {
  const expected = JSON.parse(readFileSync(resolve(import.meta.dirname, name, "expected.json"), "utf8")) as ReferenceCase["expected"];
  return { rows: existsSync(resolve(import.meta.dirname, name, "data.csv")) ? readRows(`${name}/data.csv`) : [], expected };
}
