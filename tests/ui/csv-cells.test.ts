import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { csvCell as kept } from "../../src/records/csv-out.ts";
import { csvCell as shown } from "../../src/ui/csv.ts";

const SRC = join(import.meta.dirname, "../../src");
const SIGNS = ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠", "'", '"', ",", ";", "|", " ", "1", "A1", "cmd|' /C calc'!A0", "-5", "-5e3"];
const TEXTS = fc.oneof(fc.string(), fc.string({ unit: "binary" }), fc.array(fc.constantFrom(...SIGNS), { maxLength: 6 }).map((parts) => parts.join("")));

describe("a cell of a CSV file", () => {
  test("is written the same by the screens and by the records, and no spreadsheet runs it", () => {
    fc.assert(fc.property(TEXTS, (text) => {
      expect(shown(text)).toBe(kept(text));
      const cell = Papa.parse<string[]>(kept(text), { delimiter: ",", newline: "\r\n" }).data[0]?.[0] ?? "";
      expect(/^[=+\-@\t\r\n＝＋－＠]/.test(cell) && !/^-\d+(\.\d+)?$/.test(cell)).toBe(false);
    }), { numRuns: 3000 });
  });

  test("is written in these two places only; the third reads rows again and gives them to nobody", () => {
    const writers = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((path) => /\.(ts|svelte|mjs)$/.test(path))
      // Names in SQL are quoted the same way.
      .filter((path) => !path.startsWith("db") && /replaceAll\('"', '""'\)/.test(readFileSync(join(SRC, path), "utf8"))).sort();
    expect(writers).toEqual(["records/csv-out.ts", "records/returned-rows.ts", "ui/csv.ts"]);
  });
});
