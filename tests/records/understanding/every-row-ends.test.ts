import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { examine } from "../../../src/records/understanding/examine.ts";
import { preview } from "../../../src/records/understanding/preview.ts";
import { Unreadable } from "../../../src/records/formats/unreadable.ts";
import { asked, readShape, sheetOf } from "./shape.ts";

const HEADINGS = [
  ["Ticket", "Date In", "Date Out", "Reel", "Work Done", "Parts", "Mins", "Labour"], ["date", "?", "reel", "what", "t"],
  ["doc_no", "doc_date", "sku", "description", "qty", "net", "ref"], ["Part", "Size/for", "Supplier", "Pack", "Price", "In stock"],
  ["TKT", "RECD", "MAKE", "MODEL", "HRS", "FIND1", "ACT1"],
] as const;
const CELL = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom("", "R-1041", "R-1O43", "1053/1054", "13/04/2025", "3/4/25", "4-3", "2025-11-02 19:14", "00/00/0000", "Whinbeck 40", "Withy 5 and Fernhowe 7",
    "Ekholt 30 / spare spool", "dont know", "2x brg gone. x3 reels", "bail spring replaced", "ar brg, 4x7x2.5 x1", "see notes", "55", "1h40", "2 1/4", "0,5+0,5", "999", "£52,00", "EUR 11,50",
    "1 240.50", "3 pk + 8", "a bag", "various", "-1", "TOTAL", "do", "”", "LAB-FULL-S", "Full service spinning (Whinbeck 40)", "LR BRG/CORR", "RPL", "__proto__", "constructor") },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
);
const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`;
const FILE = fc.constantFrom(...HEADINGS).chain((headings) => fc.record({
  headings: fc.constant(headings), title: fc.boolean(), rows: fc.array(fc.array(CELL, { minLength: 0, maxLength: headings.length + 1 }), { maxLength: 14 }),
})).map(({ headings, title, rows }) => [...(title ? [["Our list"]] : []), headings, ...rows, ...rows.slice(0, 2)].map((cells) => cells.map(quoted).join(";")).join("\n"));

describe("whatever a sheet of jobs, sales or stock holds", () => {
  test("each of its rows is in, known, to fix or dropped; rows in gave a record with their line, rows to fix are told by theirs", async () => {
    await fc.assert(fc.asyncProperty(FILE, async (text) => {
      const { rows, reads: [read] } = await readShape(sheetOf(text)), lines = new Set(Object.values(rows).flat().map((row) => row["source_line"]));
      if (!read || read.unreadable !== null) return;
      expect(lines.size + read.rows_known + read.rows_to_fix + read.rows_dropped).toBe(read.rows_read);
      expect(new Set(read.rejects.map(({ line }) => line)).size).toBe(read.rows_to_fix);
      expect(read.rejects.every(({ line, reason }) => !lines.has(line) && reason !== "")).toBe(true);
    }), { numRuns: 300 });
  });
  test("read twice it gives the same records with the same keys, none of them twice", async () => {
    await fc.assert(fc.asyncProperty(FILE, async (text) => {
      const one = await readShape(sheetOf(text, "one.csv")), other = await readShape(sheetOf(text, "other.csv"));
      expect(other.keys).toEqual(one.keys);
      expect(new Set(one.keys.filter((key) => key.startsWith("findings"))).size).toBe(one.keys.filter((key) => key.startsWith("findings")).length);
    }), { numRuns: 100 });
  });
  test("a preview counts the rows that reading gives", async () => {
    await fc.assert(fc.asyncProperty(FILE, async (text) => {
      const options = asked({ today: "2025-12-31" });
      const seen = await examine(sheetOf(text), options).catch((error: unknown) => { if (error instanceof Unreadable) return null; throw error; });
      if (!seen) return;
      const tried = await preview(sheetOf(text), seen.proposed, options), { reads: [read] } = await readShape(sheetOf(text), { answers: seen.proposed });
      const rows = (tallies: readonly { rows: number }[]) => tallies.reduce((sum, tally) => sum + tally.rows, 0);
      expect([tried.rows_read, rows(tried.rows_to_fix)]).toEqual([read?.rows_read, read?.rows_to_fix]);
    }), { numRuns: 60 });
  });
});
