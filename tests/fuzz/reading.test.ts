import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TABLES } from "../../src/records/columns.ts";
import { csvText } from "../../src/records/csv-out.ts";
import { read, rowsOf } from "../records/reading/reading.ts";

const passed = (staged: Record<string, unknown[]>) => Object.values(staged).reduce((sum, rows) => sum + rows.length, 0);

/** Letters that a CSV file can trip over, and words that a database, a page or a spreadsheet would act on. */
const CROOKED = fc.oneof(
  fc.string({ unit: fc.constantFrom(",", ";", "\t", "|", '"', "'", "\n", "\r", "\r\n", " ", "a", "é", "0", "1", "-", "\u0000", "\uFEFF", "\u2028", "💧"), maxLength: 30 }),
  fc.constantFrom("=1+1", "@x", "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "'; drop table ledger.tickets; --", "__proto__", "constructor",
    "2026-03-14", "14/03/2026", "1,5", "NaN", "1e400", "yes", "R-1", "ar_clutch", "rotor", "replaced", "null", "undefined", "\\N", "toString"),
);
const HEADING = fc.constantFrom(...TABLES.map(({ columns }) => columns.map(({ name }) => name)));

describe("whatever a file holds", () => {
  test("each of its rows passed, is to fix or was dropped, and the rows to fix are told by lines it has", async () => {
    await fc.assert(fc.asyncProperty(HEADING, fc.array(fc.array(CROOKED, { maxLength: 8 }), { maxLength: 12 }), async (headings, rows) => {
      const text = `${headings.join(",")}\n${rows.map((cells) => cells.join(",")).join("\n")}`;
      const { staged, rows_read, rows_to_fix, rows_dropped, rejects, unreadable } = await read(text, "any.csv");
      expect(passed(staged) + rows_to_fix + rows_dropped).toBe(rows_read + (unreadable === null ? 0 : passed(staged)));
      expect(new Set(rejects.map(({ line }) => line)).size).toBe(rows_to_fix);
      const lines = text.split("\n").length;
      for (const { line, reason } of rejects) expect(line > 1 && line <= lines && reason !== "").toBe(true);
    }), { numRuns: 1000 });
  }, 300_000);

  test("bytes of any kind give a tally or a sentence, never a failure", async () => {
    await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), fc.constantFrom("", "ticket_no,received_on,model\n", "\uFEFFticket_no;received_on;model\r\n"), async (bytes, head) => {
      const { rows_read, rows_to_fix, rows_dropped, staged, unreadable } = await read(new Blob([head, bytes as Uint8Array<ArrayBuffer>]));
      expect(unreadable === null ? passed(staged) + rows_to_fix + rows_dropped : (unreadable.match(/\.$|\?$|: /) ? rows_read : -1)).toBe(rows_read);
    }), { numRuns: 1000 });
  }, 300_000);

  test("rows and their lines are the same however the text is cut into pieces", async () => {
    await fc.assert(fc.asyncProperty(fc.array(fc.array(CROOKED, { minLength: 3, maxLength: 3 }), { maxLength: 8 }), fc.integer({ min: 1, max: 9 }), async (rows, size) => {
      const text = csvText(["ticket_no", "received_on", "model"], rows);
      expect(await rowsOf(text, size)).toEqual(await rowsOf(text));
    }), { numRuns: 500 });
  }, 300_000);
});

test("a text that our own writer wrote comes back letter for letter, but for blanks and unshowable signs", async () => {
  const showable = fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }).map((text) => text.normalize("NFC").trim().replace(/\s+/g, " "))
    .filter((text) => text !== "" && !/[\u0000-\u001F\u007F-\u009F\uFFFD]/.test(text));
  await fc.assert(fc.asyncProperty(fc.array(showable, { minLength: 1, maxLength: 10 }), async (models) => {
    const text = csvText(["ticket_no", "received_on", "model", "note"], models.map((model, at) => [`R-${at}`, "2026-03-01", model, model]));
    const { staged, rejects } = await read(text);
    expect(rejects).toEqual([]);
    expect(staged["tickets"]?.map((row) => [row["model"], row["note"]])).toEqual(models.map((model) => [model, model]));
  }), { numRuns: 200 });
}, 300_000);
