import { readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";

const FOLDER = resolve(import.meta.dirname, "../notebooks");
const NOT_NOTEBOOKS = ["demo-engine.ts"];
const names = readdirSync(FOLDER).filter((name) => name.endsWith(".ts") && !NOT_NOTEBOOKS.includes(name));

describe("notebooks", () => {
  test.each(names)("%s runs, and shows no number that is none", async (name) => {
    const { notebook } = await import(join(FOLDER, name)) as { notebook: () => Promise<string> };
    const text = await notebook();
    expect(text).toMatch(/^# .+/);
    expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(text.match(/\d/g)?.length).toBeGreaterThan(20);
  });
});
