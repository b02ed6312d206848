import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { readShape } from "../records/understanding/shape.ts";
import { ANY_FILE, fuzzRuns } from "./any-file.ts";

/** Sentences that count dropped rows: `3 rows: dropped as blank.` */
const DROPPED = /^(\d+) rows?: (?:dropped|passed over|set aside)\b/;
const seen = { files: 0, unreadable: 0, in: 0, known: 0, to_fix: 0, dropped: 0 };

describe("any file a shop may have", () => {
  test("lines in = records + known + to fix + dropped with a reason, each line once, and as many as its writer wrote", async () => {
    await fc.assert(fc.asyncProperty(ANY_FILE, async ({ content, rows: written, name }) => {
      const { rows, reads } = await readShape({ name, blob: new Blob([content]) }), [read] = reads;
      seen.files += 1;
      if (!read || read.unreadable !== null) {
        seen.unreadable += 1;
        expect(reads.map(({ rows_read, unreadable }) => [rows_read, unreadable === ""])).toEqual([[0, false]]);
        return;
      }
      const lines = new Set(Object.values(rows).flat().map((row) => row["source_line"])), fixes = new Set(read.rejects.map(({ line }) => line));
      expect(read.rows_read).toBe(written);
      expect(lines.size + read.rows_known + read.rows_to_fix + read.rows_dropped).toBe(written);
      expect(fixes.size).toBe(read.rows_to_fix);
      expect(read.rejects.filter(({ line, reason }) => lines.has(line) || reason === "")).toEqual([]);
      expect(read.remarks.reduce((sum, remark) => sum + Number(DROPPED.exec(remark)?.[1] ?? 0), 0)).toBe(read.rows_dropped);
      for (const [end, count] of [["in", lines.size], ["known", read.rows_known], ["to_fix", read.rows_to_fix], ["dropped", read.rows_dropped]] as const) seen[end] += count;
    }), { numRuns: fuzzRuns(300) });
  }, 3_600_000);
});

afterAll(() => {
  process.stdout.write(`fuzz: ${JSON.stringify(seen)}\n`);
  // Properties that never meet what they are about prove nothing.
  expect(seen.unreadable).toBeLessThan(seen.files / 10);
  for (const end of ["in", "known", "to_fix", "dropped"] as const) expect([end, seen[end] > 0]).toEqual([end, true]);
});
